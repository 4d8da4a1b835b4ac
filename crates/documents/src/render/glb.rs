//! A model as binary glTF 2.0: metres, y up, a node for each part with its name.

use super::solid::Mesh;
use serde_json::{Value, json};

/// How a part looks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Look {
    /// Shell, walls, lids: seen through.
    Shell,
    /// What stands inside.
    Internal,
    /// Pipes and nozzles.
    Pipe,
    /// What floats.
    Float,
    /// Water: seen through.
    Water,
}

impl Look {
    const ALL: [Look; 5] = [Look::Shell, Look::Internal, Look::Pipe, Look::Float, Look::Water];

    /// Red, green, blue and how much it covers, of 1.
    fn colour(self) -> [f32; 4] {
        match self {
            Look::Shell => [0.70, 0.72, 0.74, 0.35],
            Look::Internal => [0.45, 0.47, 0.50, 1.0],
            Look::Pipe => [0.58, 0.60, 0.63, 1.0],
            Look::Float => [0.80, 0.35, 0.10, 1.0],
            Look::Water => [0.25, 0.50, 0.75, 0.30],
        }
    }

    fn material(self) -> Value {
        let covers = self.colour()[3] >= 1.0;
        json!({
            "name": format!("{self:?}").to_lowercase(),
            "pbrMetallicRoughness": { "baseColorFactor": self.colour(), "metallicFactor": 0.0, "roughnessFactor": 0.8 },
            "alphaMode": if covers { "OPAQUE" } else { "BLEND" },
        })
    }
}

/// A part of a model.
#[derive(Debug, Clone, PartialEq)]
pub struct Node {
    /// A short lower-case name for programs.
    pub id: String,
    /// What a person calls it, and what of it is nominal.
    pub name: String,
    /// How it looks.
    pub look: Look,
    /// Its surface.
    pub mesh: Mesh,
    /// Volume that it ought to have, m3, where that is known.
    pub volume: Option<f64>,
}

/// The model as a file.
#[must_use]
pub fn glb(title: &str, nodes: &[Node]) -> Vec<u8> {
    let (mut data, mut views, mut accessors) = (Vec::new(), Vec::new(), Vec::new());
    let (mut meshes, mut list) = (Vec::new(), Vec::new());
    for (k, node) in nodes.iter().enumerate() {
        // The standard's y is our height.
        #[allow(clippy::cast_possible_truncation, reason = "the format's numbers are of single precision")]
        let corners: Vec<[f32; 3]> =
            node.mesh.corners.iter().map(|[x, y, z]| [*x as f32, *z as f32, -*y as f32]).collect();
        let edge = |pick: fn(f32, f32) -> f32, from: f32| {
            corners.iter().fold([from; 3], |all, p| [pick(all[0], p[0]), pick(all[1], p[1]), pick(all[2], p[2])])
        };
        let (low, high) = (edge(f32::min, f32::MAX), edge(f32::max, f32::MIN));
        let start = data.len();
        data.extend(corners.iter().flatten().flat_map(|v| v.to_le_bytes()));
        views.push(json!({ "buffer": 0, "byteOffset": start, "byteLength": data.len() - start, "target": 34962 }));
        accessors.push(json!({
            "bufferView": 2 * k, "componentType": 5126, "count": corners.len(), "type": "VEC3", "min": low, "max": high,
        }));
        let start = data.len();
        data.extend(node.mesh.triangles.iter().flatten().flat_map(|v| v.to_le_bytes()));
        views.push(json!({ "buffer": 0, "byteOffset": start, "byteLength": data.len() - start, "target": 34963 }));
        let count = 3 * node.mesh.triangles.len();
        accessors.push(json!({ "bufferView": 2 * k + 1, "componentType": 5125, "count": count, "type": "SCALAR" }));
        let material = Look::ALL.iter().position(|look| *look == node.look);
        let primitive = json!({ "attributes": { "POSITION": 2 * k }, "indices": 2 * k + 1, "material": material });
        meshes.push(json!({ "name": node.name, "primitives": [primitive] }));
        let mut entry = json!({ "name": node.name, "mesh": k, "extras": { "part": node.id } });
        if let Some(volume) = node.volume {
            entry["extras"]["volume_m3"] = json!(volume);
        }
        list.push(entry);
    }
    let text = json!({
        "asset": { "version": "2.0", "generator": "Stillrise" },
        "scene": 0,
        "scenes": [{ "name": title, "nodes": (0..list.len()).collect::<Vec<_>>() }],
        "nodes": list,
        "meshes": meshes,
        "materials": Look::ALL.map(Look::material),
        "accessors": accessors,
        "bufferViews": views,
        "buffers": [{ "byteLength": data.len() }],
    });
    let mut text = text.to_string().into_bytes();
    // Both parts end on a multiple of four bytes: text with spaces, data with zeros.
    text.resize(text.len().next_multiple_of(4), b' ');
    data.resize(data.len().next_multiple_of(4), 0);
    let size = |n: usize| u32::try_from(n).unwrap_or(u32::MAX).to_le_bytes();
    let mut out = Vec::with_capacity(28 + text.len() + data.len());
    out.extend(b"glTF");
    out.extend(2_u32.to_le_bytes());
    out.extend(size(28 + text.len() + data.len()));
    for (kind, part) in [(b"JSON", &text), (b"BIN\0", &data)] {
        out.extend(size(part.len()));
        out.extend(kind);
        out.extend(part);
    }
    out
}
