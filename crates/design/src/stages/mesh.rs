//! Stage: an oleophilic mesh behind the plates.

use super::in_water::InWater;
use super::plate_pack::PlatePack;
use super::stage::{Datum, Drawn, Line, Stage};
use super::{Crossing, Pass, Place, Through};
use crate::basis::stated::stated_or_usual;
use crate::basis::waters::YesNo;
use crate::enquiry::fields::Curve;
use crate::enquiry::keys::{Quantity, keys};
use crate::performance::passage::Fluids;
use crate::provenance::{Node, Origin, Pair, Stop, Trail, Val, entry, given};
use crate::train::row::{DIMENSION, Row};
use crate::train::unit::Unit;
use crate::vessel::some;
use crate::{by, gather, reckon, record};
use stillrise_handbook::hydraulics::mesh_loss;
use stillrise_handbook::page::Series;
use stillrise_handbook::separation::catch::Catch;
use stillrise_handbook::separation::mesh_curve::MeshCurve;
use stillrise_handbook::separation::mesh_removal::Mesh;
use stillrise_handbook::separation::{mesh_curve, mesh_removal};
use stillrise_units::catalog::{FT_MIN, IN, MIL, MM, MM_S, PERCENT, UM};
use stillrise_units::{Length, Ratio, Typed, Velocity, ratio};

keys! {
    /// Keys of the mesh.
    MeshKeys "model" {
        /// Thickness of the coalescing mesh, along the flow
        thickness as "mesh": Quantity<Length> = spec.units(&IN, &MM).between("0.1 in", "60 in").like("\"4 in\"");
        /// Diameter of the mesh's fibre
        fibre as "mesh_fibre": Quantity<Length> = spec.units(&MIL, &MM).between("0.001 mm", "5 mm").like("\"0.28 mm\"");
        /// Share of the mesh's volume that is fibre
        solidity as "mesh_solidity": Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0.1 %", "60 %").like("\"3 %\"");
        /// Measured on the mesh: droplet size, and share it catches
        curve as "mesh_curve": Curve = spec.like("[\"10 um: 20 %\", \"60 um: 90 %\"]");
        /// Velocity on the face of the mesh above which it was measured to let collected oil go
        velocity_limit as "mesh_velocity_limit": Quantity<Velocity> = spec.units(&FT_MIN, &MM_S).between("0.01 mm/s", "1 m/s").like("\"8 mm/s\"");
    }
}

record! {
    /// A mesh as it is laid out, as high and as wide as the pack ahead of it.
    Dimensions {
        /// its thickness along the flow
        thickness: Length;
        /// its fibre
        fibre: Length;
        /// share of it that is fibre
        solidity: Ratio;
    }
}

/// A coalescing mesh.
#[derive(Debug, Clone)]
pub struct CoalescingMesh {
    /// How it is laid out.
    pub laid: Dimensions,
    /// Measured on it: size, and share it catches.
    pub curve: Option<Val<Series>>,
    /// Velocity on its face above which it was measured to let collected oil go.
    pub velocity_limit: Option<Val<Velocity>>,
}

impl CoalescingMesh {
    /// As a row or a described unit lays it out; `None` without one.
    ///
    /// # Errors
    /// [`Stop`] where there are no plates behind which it could stand.
    pub fn laid<T: Trail>(row: &mut Row<'_, T>, plates: bool) -> Result<Option<Self>, Stop> {
        const SHARE: Pair = (&PERCENT, &PERCENT);
        let m = row.m;
        let Some(thickness) =
            row.laid("thickness of the mesh", DIMENSION, &m.stages.mesh.thickness).filter(|depth| some(depth.q))
        else {
            return Ok(None);
        };
        if !plates {
            return Err(row.stop("a mesh stands behind plates, and there are none; leave mesh out"));
        }
        let usual = Length::of(0.28, &MM);
        let why = "not stated: {11 mil|0.28 mm}, common for knitted mesh";
        let fibre = row.or_usual("fibre of the mesh", (&MIL, &MM), &m.stages.mesh.fibre, usual, why);
        let why = "not stated: 3 %, common for knitted mesh";
        let solidity = row.or_usual("solid share of the mesh", SHARE, &m.stages.mesh.solidity, ratio(0.03), why);
        let curve = m.stages.mesh.curve.is_given().then(|| {
            let rows = m.stages.mesh.curve.rows.clone();
            let source = m.stages.mesh.curve.claims.source(row.source);
            given(row.t, "measured curve of the mesh", Some((&UM, &UM)), rows, &source, &m.stages.mesh.curve.text)
        });
        let label = "velocity on the mesh above which it lets oil go";
        let velocity_limit = row.laid(label, (&FT_MIN, &MM_S), &m.stages.mesh.velocity_limit);
        Ok(Some(Self { laid: Dimensions { thickness, fibre, solidity }, curve, velocity_limit }))
    }
}

impl CoalescingMesh {
    /// Its dimensions as laid out: name, and place in the trail.
    #[must_use]
    pub fn fields(&self) -> Vec<(&'static str, Node)> {
        self.laid.fields()
    }
}

impl Stage for CoalescingMesh {
    fn name(&self) -> &'static str {
        "mesh"
    }
    fn compartment(&self) -> Option<(Place, Val<Length>)> {
        Some((Place::Mesh, self.laid.thickness))
    }
    fn loses(&self) -> bool {
        true
    }
    fn loss<T: Trail>(&self, t: &mut T, way: &Crossing<'_>) -> Result<Option<Val<Length>>, Stop> {
        let Some(pack) = &way.unit.pack else { return Ok(None) };
        let (l, water) = (&self.laid, &way.basis.fluids.cold);
        // All water that leaves the pack meets it on the pack's face, not on the whole section.
        let section = reckon!(t, "section of the mesh", [FT2, M2], (width = pack.follows.width, height = pack.laid.height) width * height);
        let face = reckon!(t, "velocity on the face of the clean mesh", [FT_MIN, MM_S], (flow = way.flow, section = section) flow / section);
        let clean = by!(
            t,
            "loss of the clean mesh",
            mesh_loss::loss(water.viscosity, face, l.thickness, l.fibre, l.solidity, water.density)
        )?;
        if !way.fouled {
            return Ok(Some(clean));
        }
        let multiple = stated_or_usual(t, way.w, way.e.unit.mesh_fouling(), "loss of the fouled over the clean mesh");
        let least = stated_or_usual(t, way.w, way.e.unit.mesh_fouled_loss(), "least loss of a fouled mesh");
        Ok(Some(reckon!(
            t,
            "loss of the fouled mesh",
            [IN, MM],
            (clean = clean, multiple = multiple, least = least)(clean * multiple).max(least)
        )))
    }
    fn pass<T: Trail>(&self, t: &mut T, unit: &Unit, way: &Through<'_>) -> Result<Option<Pass>, Stop> {
        Ok(unit.pack.as_ref().map(|pack| Pass::Mesh(MeshPass::through(t, self, pack, way))))
    }
    fn in_water(&self, unit: &Unit) -> Vec<InWater> {
        let Some((zone, pack)) = unit.compartment(Place::Mesh).zip(unit.pack.as_ref()) else { return Vec::new() };
        let (low, high, between) = (pack.laid.bottom.q, pack.follows.top.q, (zone.from, zone.to));
        let (fibre, solidity) = (self.laid.fibre.q, self.laid.solidity.q);
        // It stands in a frame that carries on the pack's.
        vec![
            InWater::Fibres { between, low, high, fibre, solidity },
            InWater::Shelf { at: low, between },
            InWater::Shelf { at: high, between },
        ]
    }
    fn drawn(&self, unit: &Unit) -> Option<Drawn> {
        let (zone, pack) = (unit.compartment(Place::Mesh)?, unit.pack.as_ref()?);
        let (low, high) = (pack.laid.bottom.q, pack.follows.top.q);
        let data = vec![
            Datum::Length(self.laid.thickness.q),
            Datum::Words(" thick, fibre "),
            Datum::Fibre(self.laid.fibre.q),
            Datum::Words(", "),
            Datum::Share(self.laid.solidity.q),
            Datum::Words(" solid"),
        ];
        let (between, middle) = ((zone.from, zone.to), (zone.from + zone.to) * 0.5);
        let lines = vec![Line::Bed { between, low, high }];
        Some(Drawn::new("mesh", "Mesh", data, (middle, high - pack.laid.height.q * 0.15), lines))
    }
}

record! {
    /// The bed of a mesh as one flow meets it.
    Bed {
        /// share of it that is fibre
        solidity: Ratio;
        /// its fibre
        fibre: Length;
        /// its depth along the flow
        depth: Length;
        /// velocity on its face
        face: Velocity;
        /// share of the droplets that touch a fibre and stay
        sticking: Ratio;
        /// share of its voids that oil fills
        saturation: Ratio;
    }
}

/// A mesh as one flow meets it.
#[derive(Debug, Clone)]
pub struct MeshPass {
    /// Its bed.
    pub bed: Bed,
    /// Its measured curve, if there is one: it stands in place of the theory.
    pub curve: Option<Val<Series>>,
    /// Whether it counts in the headline.
    pub counts: bool,
    at: Node,
}

/// The bed as droplets meet it.
fn as_met(bed: &Bed) -> Mesh {
    Mesh {
        solidity: bed.solidity.q,
        fibre: bed.fibre.q,
        length: bed.depth.q,
        u: bed.face.q,
        sticking: bed.sticking.q,
        saturation: bed.saturation.q,
    }
}

impl MeshPass {
    fn new<T: Trail>(t: &mut T, bed: Bed, curve: Option<Val<Series>>, counts: bool) -> Self {
        let label = "mesh as it is met";
        let at = match &curve {
            Some(curve) => gather!(t, label, MeshCurve { curve: curve }).at,
            None => t.push(|| {
                let inputs = bed.fields().into_iter().map(|(_, at)| at).collect();
                entry(label, &as_met(&bed), None, Origin::Gathered { inputs })
            }),
        };
        Self { bed, curve, counts, at }
    }

    /// A mesh behind its pack.
    pub fn through<T: Trail>(t: &mut T, mesh: &CoalescingMesh, pack: &PlatePack, way: &Through<'_>) -> Self {
        let (f, m, flow) = (&mesh.laid, &way.basis.methods, way.flow);
        let section = reckon!(t, "section of the mesh", [FT2, M2], (width = pack.follows.width, height = pack.laid.height) width * height);
        let mut face = reckon!(t, "velocity on the face of the mesh", [FT_MIN, MM_S], (flow = flow, section = section) flow / section);
        if way.state.is_end() {
            face = reckon!(t, "the same at the end of the interval", [FT_MIN, MM_S], (face = face, lost = m.fouling) face / (ratio(1.0) - lost));
        }
        let bed = Bed {
            solidity: f.solidity,
            fibre: f.fibre,
            depth: f.thickness,
            face,
            sticking: m.mesh_sticking,
            saturation: m.mesh_saturation,
        };
        Self::new(t, bed, mesh.curve.clone(), m.mesh_credit.q == YesNo::Yes)
    }

    /// What droplets meet in it.
    #[must_use]
    pub fn catch(&self) -> Val<Catch> {
        let q = match &self.curve {
            Some(curve) => Catch::MeshCurve(MeshCurve { curve: curve.q.clone() }),
            None => Catch::Mesh(as_met(&self.bed)),
        };
        Val { q, at: self.at }
    }

    /// The same, counted in the headline or not.
    #[must_use]
    pub fn counted(&self, counts: bool) -> Self {
        Self { counts, ..self.clone() }
    }

    /// Share of one size that it catches, by its measured curve where there is one.
    ///
    /// # Errors
    /// [`Stop`] when the page has no answer.
    pub fn caught<T: Trail>(
        &self,
        t: &mut T,
        label: &str,
        (d, rise): (Val<Length>, Val<Velocity>),
        fluids: &Fluids,
    ) -> Result<Val<Ratio>, Stop> {
        if let Some(curve) = &self.curve {
            return by!(t, label, mesh_curve::caught(d, curve));
        }
        let Bed { solidity, fibre, depth, face, sticking, saturation } = self.bed;
        let (mu, temperature) = (fluids.viscosity, fluids.temperature);
        by!(
            t,
            label,
            mesh_removal::removal(d, rise, mu, temperature, solidity, fibre, depth, face, sticking, saturation)
        )
    }

    /// At another flow, in a unit of another area.
    pub fn scaled<T: Trail>(&self, t: &mut T, more: Val<Ratio>, area: Val<Ratio>) -> Self {
        let face = reckon!(t, "velocity on the face of the mesh then", [FT_MIN, MM_S], (v = self.bed.face, flow = more, area = area) v * flow / area);
        Self::new(t, Bed { face, ..self.bed.clone() }, self.curve.clone(), self.counts)
    }
}
