//! Stage: an oleophilic mesh behind the plates.

use super::Through;
use crate::basis::waters::YesNo;
use crate::performance::passage::Fluids;
use crate::provenance::{Node, Origin, Stop, Trail, Val, entry};
use crate::train::unit::Unit;
use crate::{by, gather, reckon, record};
use stillrise_handbook::page::Series;
use stillrise_handbook::separation::catch::Catch;
use stillrise_handbook::separation::mesh_curve::MeshCurve;
use stillrise_handbook::separation::mesh_removal::Mesh;
use stillrise_handbook::separation::{mesh_curve, mesh_removal};
use stillrise_units::{Length, Ratio, Typed, Velocity, ratio};

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

    /// The mesh of a unit; `None` without one.
    pub fn through<T: Trail>(t: &mut T, unit: &Unit, way: &Through<'_>) -> Option<Self> {
        let (f, m, flow) = (&unit.frame, &way.basis.methods, way.flow);
        if f.mesh.q.si() <= 0.0 {
            return None;
        }
        let section =
            reckon!(t, "section of the mesh", [FT2, M2], (width = f.width, height = f.pack_height) width * height);
        let mut face = reckon!(t, "velocity on the face of the mesh", [FT_MIN, MM_S], (flow = flow, section = section) flow / section);
        if way.state.is_end() {
            face = reckon!(t, "the same at the end of the interval", [FT_MIN, MM_S], (face = face, lost = m.fouling) face / (ratio(1.0) - lost));
        }
        let bed = Bed {
            solidity: f.mesh_solidity,
            fibre: f.mesh_fibre,
            depth: f.mesh,
            face,
            sticking: m.mesh_sticking,
            saturation: m.mesh_saturation,
        };
        Some(Self::new(t, bed, unit.particulars.mesh_curve.clone(), m.mesh_credit.q == YesNo::Yes))
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
