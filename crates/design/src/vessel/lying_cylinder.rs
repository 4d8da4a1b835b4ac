//! Body: a cylinder that lies, closed by heads.

use super::{Layer, Stretch};
use crate::provenance::{Stop, Trail, Val, given};
use crate::{by, reckon, record, say};
use stillrise_handbook::ground::flotation::Wedge;
use stillrise_handbook::ground::{soil_over_cylinder, soil_wedge, submerged_cylinder};
use stillrise_handbook::hydraulics::wetted_segment;
use stillrise_handbook::vessel::shape::Shape;
use stillrise_handbook::vessel::shapes::{HeadForm, Hopper, HorizontalCylinder};
use stillrise_handbook::vessel::{cylinder_chord, cylinder_part_surface, cylinder_part_volume};
use stillrise_units::catalog::{DEG, IN, MM, ONE};
use stillrise_units::{Angle, Area, Length, Ratio, Typed, Volume, ratio};

record! {
    /// A lying cylinder, inside dimensions.
    LyingCylinder {
        /// across the flow
        diameter: Length;
        /// length of the shell, between its heads
        shell: Length;
        /// form of both heads
        heads: HeadForm;
        /// inside length over both heads
        over_all: Length;
    }
}

impl LyingCylinder {
    /// Of a diameter, a shell and a form of heads.
    pub fn new<T: Trail>(t: &mut T, diameter: Val<Length>, shell: Val<Length>, heads: Val<HeadForm>) -> Self {
        let cylinder = HorizontalCylinder { diameter: diameter.q, shell: shell.q, head: heads.q.head() };
        let source = "form of the head";
        let deep = given(t, "depth of a head", Some((&IN, &MM)), cylinder.head_depth(), source, heads.q.word());
        let over_all =
            reckon!(t, "inside length over the heads", [IN, MM], (shell = shell, head = deep) shell + head + head);
        Self { diameter, shell, heads, over_all }
    }

    /// By outside measures.
    pub(super) fn outside<T: Trail>(&self, t: &mut T, wall: Val<Length>) -> Self {
        let both = |t: &mut T, label: &str, inside: Val<Length>| reckon!(t, label, [IN, MM], (inside = inside, wall = wall) inside + wall * 2.0);
        Self {
            diameter: both(t, "outside diameter", self.diameter),
            over_all: both(t, "outside length over the heads", self.over_all),
            ..self.clone()
        }
    }
    pub(super) fn length(&self) -> Val<Length> {
        self.shell
    }
    pub(super) fn over_all(&self) -> Val<Length> {
        self.over_all
    }
    pub(super) fn width(&self) -> Val<Length> {
        self.diameter
    }
    pub(super) fn height(&self) -> Val<Length> {
        self.diameter
    }
    fn ends<T: Trail>(t: &mut T, of: Stretch) -> Val<Ratio> {
        let ends = f64::from(of.ends);
        given(t, "heads that close it", Some((&ONE, &ONE)), ratio(ends), "compartments of the unit", &say!(T, "{ends}"))
    }
    pub(super) fn surface<T: Trail>(
        &self,
        t: &mut T,
        label: &str,
        of: Stretch,
        level: Val<Length>,
    ) -> Result<Val<Area>, Stop> {
        let ends = Self::ends(t, of);
        by!(t, label, cylinder_part_surface::area(self.diameter, of.length, self.heads, ends, level))
    }
    pub(super) fn volume<T: Trail>(
        &self,
        t: &mut T,
        label: &str,
        of: Stretch,
        level: Val<Length>,
    ) -> Result<Val<Volume>, Stop> {
        let ends = Self::ends(t, of);
        by!(t, label, cylinder_part_volume::volume(self.diameter, of.length, self.heads, ends, level))
    }
    pub(super) fn section<T: Trail>(&self, t: &mut T, label: &str, level: Val<Length>) -> Result<Val<Area>, Stop> {
        by!(t, label, wetted_segment::area(self.diameter, level))
    }
    pub(super) fn clear_width<T: Trail>(
        &self,
        t: &mut T,
        label: &str,
        from: Val<Length>,
        to: Val<Length>,
    ) -> Result<Val<Length>, Stop> {
        let low = by!(t, &say!(T, "{label}, at its underside"), cylinder_chord::width(self.diameter, from))?;
        let high = by!(t, &say!(T, "{label}, at its top"), cylinder_chord::width(self.diameter, to))?;
        Ok(reckon!(t, label, [IN, MM], (underside = low, top = high) underside.min(top)))
    }
    pub(super) fn mean_width<T: Trail>(&self, t: &mut T, label: &str, level: Val<Length>) -> Result<Val<Length>, Stop> {
        let area = self.section(t, &say!(T, "{label}: its section"), level)?;
        Ok(reckon!(t, label, [IN, MM], (section = area, height = level) section / height))
    }
    pub(super) fn mean_depth<T: Trail>(&self, t: &mut T, level: Val<Length>) -> Result<Val<Length>, Stop> {
        let area = self.section(t, "wetted cross-section", level)?;
        let chord = by!(t, "width of the surface", cylinder_chord::width(self.diameter, level))?;
        Ok(reckon!(t, "mean depth of the water", [IN, MM], (section = area, width = chord) section / width))
    }
    pub(super) fn layer<T: Trail>(
        &self,
        t: &mut T,
        label: &str,
        of: Stretch,
        layer: &Layer,
    ) -> Result<Val<Volume>, Stop> {
        let all = self.volume(t, &say!(T, "{label}: up to its surface"), of, layer.surface)?;
        let below = self.volume(t, &say!(T, "{label}: up to the interface"), of, layer.interface)?;
        Ok(reckon!(t, label, [GAL, M3], (all = all, below = below) all - below))
    }
    pub(super) fn under_water<T: Trail>(&self, t: &mut T, level: Val<Length>) -> Result<Val<Volume>, Stop> {
        let label = "volume of the cylinder under the groundwater";
        by!(t, label, submerged_cylinder::volume(self.diameter, self.over_all, level))
    }
    pub(super) fn soil_over<T: Trail>(&self, t: &mut T, label: &str, level: Val<Length>) -> Result<Val<Volume>, Stop> {
        by!(t, label, soil_over_cylinder::volume(self.diameter, self.over_all, level))
    }
    /// Of planes along both sides, and at both heads where they count.
    pub(super) fn soil_beside<T: Trail>(
        &self,
        t: &mut T,
        label: &str,
        wedge: Wedge,
        level: Val<Length>,
    ) -> Result<Val<Volume>, Stop> {
        let lean = given(
            t,
            "lean of the planes in the soil, from upright",
            Some((&DEG, &DEG)),
            Angle::of(wedge.lean, &DEG),
            "the way in which soil counts",
            "by that method",
        );
        let (length, diameter) = (self.over_all, self.diameter);
        let along = if wedge.at_heads {
            reckon!(
                t,
                "length of both sides and both heads",
                [FT, M],
                (length = length, width = diameter)(length + width) * 2.0
            )
        } else {
            reckon!(t, "length of both sides", [FT, M], (length = length) length * 2.0)
        };
        let above = if wedge.from_widest {
            reckon!(t, "level above the widest line", [FT, M], (level = level, diameter = diameter) level - diameter / 2.0)
        } else {
            level
        };
        by!(t, label, soil_wedge::volume(along, above, lean))
    }
    /// A cylinder has no hopper.
    pub(super) fn shape(&self, _: Option<Hopper>) -> Shape {
        let head = self.heads.q.head();
        Shape::HorizontalCylinder(HorizontalCylinder { diameter: self.diameter.q, shell: self.shell.q, head })
    }
}
