//! The quantity types: plain `uom` quantities in SI, every pure dimension of one kind, so that
//! `viscosity / density` *is* a kinematic viscosity and no conversion is needed between steps.

use crate::catalog::{Dim, Unit};
use core::marker::PhantomData;
use uom::si::{ISQ, Quantity, SI};
use uom::typenum::{N1, N2, N3, P1, P2, P3, Z0};

/// A quantity of length^L mass^M time^T, held in SI.
pub type Plain<L, M, T> = Quantity<ISQ<L, M, T, Z0, Z0, Z0, Z0>, SI<f64>, f64>;

/// Pure number: coefficient, fraction, slope.
pub type Ratio = Plain<Z0, Z0, Z0>;
/// Length, metre.
pub type Length = Plain<P1, Z0, Z0>;
/// Area, square metre.
pub type Area = Plain<P2, Z0, Z0>;
/// Volume, cubic metre.
pub type Volume = Plain<P3, Z0, Z0>;
/// Time, second.
pub type Time = Plain<Z0, Z0, P1>;
/// Velocity, overflow rate, rainfall intensity: metre per second.
pub type Velocity = Plain<P1, Z0, N1>;
/// Acceleration, metre per second squared.
pub type Acceleration = Plain<P1, Z0, N2>;
/// Volume flow, cubic metre per second.
pub type Flow = Plain<P3, Z0, N1>;
/// Mass, kilogram.
pub type Mass = Plain<Z0, P1, Z0>;
/// Mass flow, kilogram per second.
pub type MassRate = Plain<Z0, P1, N1>;
/// Density, kilogram per cubic metre.
pub type Density = Plain<N3, P1, Z0>;
/// Mass concentration; the same dimension as [`Density`], another range of numbers.
pub type Concentration = Density;
/// Dynamic viscosity, pascal second.
pub type Viscosity = Plain<N1, P1, N1>;
/// Kinematic viscosity, square metre per second.
pub type KinematicViscosity = Plain<P2, Z0, N1>;
/// Pressure, pascal.
pub type Pressure = Plain<N1, P1, N2>;
/// Interfacial tension, newton per metre.
pub type SurfaceTension = Plain<Z0, P1, N2>;
/// Force, newton.
pub type Force = Plain<P1, P1, N2>;
/// Power, watt.
pub type Power = Plain<P2, P1, N3>;
/// Power per mass (turbulent dissipation), watt per kilogram.
pub type Dissipation = Plain<P2, Z0, N3>;
/// Reciprocal length, 1/m.
pub type PerLength = Plain<N1, Z0, Z0>;
/// Velocity gradient, 1/s.
pub type ShearRate = Plain<Z0, Z0, N1>;
/// Plane angle, radian.
pub type Angle = uom::si::f64::Angle;
/// Temperature on an absolute scale, kelvin.
pub type Temperature = uom::si::f64::ThermodynamicTemperature;

/// What every quantity can say of itself: its dimension and its number in SI.
pub trait Typed: Copy + PartialEq + core::fmt::Debug {
    /// The dimension, for run-time matching of units.
    const DIM: Dim;
    /// The number in coherent SI.
    fn si(self) -> f64;
    /// From the number in coherent SI.
    fn from_si(value: f64) -> Self;
    /// The number in `unit`, which must be of this dimension.
    fn in_unit(self, unit: &Unit) -> f64 {
        debug_assert!(unit.dim == Self::DIM);
        unit.from_si(self.si())
    }
    /// From a number in `unit`, which must be of this dimension.
    fn of(value: f64, unit: &Unit) -> Self {
        debug_assert!(unit.dim == Self::DIM);
        Self::from_si(unit.to_si(value))
    }
}

macro_rules! typed {
    ($($ty:ident),* $(,)?) => {$(
        impl Typed for $ty {
            const DIM: Dim = Dim::$ty;
            fn si(self) -> f64 {
                self.value
            }
            fn from_si(value: f64) -> Self {
                Self { dimension: PhantomData, units: PhantomData, value }
            }
        }
    )*};
}

typed!(
    Ratio,
    Length,
    Area,
    Volume,
    Time,
    Velocity,
    Acceleration,
    Flow,
    Mass,
    MassRate,
    Density,
    Viscosity,
    KinematicViscosity,
    Pressure,
    SurfaceTension,
    Force,
    Power,
    Dissipation,
    PerLength,
    ShearRate,
    Angle,
    Temperature,
);

/// Standard acceleration of free fall, 9.80665 m/s2 (third CGPM, 1901: exact by definition).
pub const G: Acceleration = Acceleration { dimension: PhantomData, units: PhantomData, value: 9.806_65 };

/// A pure number as a quantity.
#[must_use]
pub fn ratio(value: f64) -> Ratio {
    Ratio::from_si(value)
}

/// Plain numbers stand beside the typed ones in reduced formulas.
impl Typed for f64 {
    const DIM: Dim = Dim::Ratio;
    fn si(self) -> f64 {
        self
    }
    fn from_si(value: f64) -> Self {
        value
    }
}
