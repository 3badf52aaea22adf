//! Random houses to draw: a right-angled outline with rooms, bays and neighbors.

use proptest::prelude::*;

/// A house: the steps of its upper edge, in inches, and what goes with it.
#[derive(Clone, Debug)]
pub(crate) struct House {
    towers: Vec<(i64, i64)>,
    front: usize,
    veneer: bool,
    bay: bool,
    porch: Option<(i64, i64)>,
    name: String,
    recorded: bool,
    mirrored: bool,
}

pub(crate) fn houses() -> impl Strategy<Value = House> {
    let tower = (20_i64..300, 60_i64..700);
    (
        proptest::collection::vec(tower, 1..20),
        0..4_usize,
        any::<bool>(),
        any::<bool>(),
        proptest::option::of((30_i64..200, 30_i64..120)),
        "[A-Z][a-z]{1,30}( [a-z]{1,12}){0,3}",
        any::<bool>(),
        any::<bool>(),
    )
        .prop_map(|(towers, front, veneer, bay, porch, name, recorded, mirrored)| House {
            towers,
            front,
            veneer,
            bay,
            porch,
            name,
            recorded,
            mirrored,
        })
}

fn inches(length: i64) -> String {
    format!("{}' {}\"", length / 12, length % 12)
}

impl House {
    /// Its sides file.
    pub(crate) fn text(&self) -> String {
        let wide: i64 = self.towers.iter().map(|tower| tower.0).sum();
        let (east, west) = if self.mirrored { ("west", "east") } else { ("east", "west") };
        let mut text = format!(
            "property \"1 Test Lane\"\nfront {}\n",
            ["north", "east", "south", "west"][self.front]
        );
        if self.veneer {
            text.push_str("veneer 4 5/8\"\n");
        }
        text.push_str(&format!("record {} sq ft\n", (wide * self.towers[0].1 / 144).max(10)));
        text.push_str(&format!("level \"Ground floor\"\nliving \"{}\"\n", self.name));
        let mut height = self.towers[0].1;
        text.push_str(&format!("north {}\n", inches(height)));
        let mut run = 0;
        for (i, &(width, _)) in self.towers.iter().enumerate() {
            run += width;
            let next = self.towers.get(i + 1).map_or(0, |tower| tower.1);
            if next == height && i + 1 < self.towers.len() {
                continue;
            }
            text.push_str(&format!("{east} {}", inches(run)));
            if self.recorded && i == 0 {
                text.push_str(&format!(" recorded {} ft", run / 12 + 3));
            }
            text.push('\n');
            run = 0;
            let way = if next > height { "north" } else { "south" };
            text.push_str(&format!("{way} {}\n", inches((next - height).abs())));
            height = next;
        }
        if self.bay && wide > 240 {
            let rest = wide - 120;
            text.push_str(&format!(
                "{west} {}\ndiagonal south 2' {west} 2'\n{west} 6'\ndiagonal north 2' {west} 2'\n",
                inches(rest)
            ));
        } else {
            text.push_str(&format!("{west} {}\n", inches(wide)));
        }
        if let Some((wide, deep)) = self.porch {
            text.push_str(&format!(
                "porch \"Porch\" start south {}\nnorth {}\n{east} {}\nsouth {}\n{west} {}\n",
                inches(deep + 30),
                inches(deep),
                inches(wide),
                inches(deep),
                inches(wide)
            ));
        }
        text
    }
}
