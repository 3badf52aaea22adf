//! Reads buildings from OSM XML: closed ways, and relations whose ways make up a ring.

use std::collections::{HashMap, HashSet};

use quick_xml::Reader;
use quick_xml::events::{BytesStart, Event};

use crate::error::Error;
use crate::maps::shapes::{Shapes, wrong};

/// The most ways from which one ring of a relation is put together.
const MOST_MEMBERS: usize = 1_000;

/// The most corners read for all members of all relations, since many members may name the same long way.
const MOST_WALKED: usize = 2_000_000;

/// What the tags of a way or a relation say.
#[derive(Default)]
struct Tags {
    name: Option<String>,
    number: Option<String>,
    street: Option<String>,
    is_building: bool,
}

impl Tags {
    fn add(&mut self, tag: &BytesStart<'_>) {
        let value = attribute(tag, "v");
        match attribute(tag, "k").as_deref() {
            Some("building") => self.is_building = value.as_deref() != Some("no"),
            Some("name") => self.name = value,
            Some("addr:housenumber") => self.number = value,
            Some("addr:street") => self.street = value,
            _ => {}
        }
    }

    /// Its name, or else as much of its address as is given.
    fn shown(&self) -> Option<String> {
        let address = [&self.number, &self.street].into_iter().flatten().cloned();
        let address = address.collect::<Vec<String>>().join(" ");
        self.name.clone().or_else(|| (!address.is_empty()).then_some(address))
    }
}

#[derive(Default)]
struct Way {
    id: String,
    nodes: Vec<i64>,
    tags: Tags,
}

impl Way {
    fn is_closed(&self) -> bool {
        self.nodes.len() > 3 && self.nodes.first() == self.nodes.last()
    }
}

/// A relation with the ways around its outside and around its holes.
#[derive(Default)]
struct Relation {
    id: String,
    outer: Vec<String>,
    inner: Vec<String>,
    tags: Tags,
}

#[derive(Default)]
struct Extract {
    nodes: HashMap<i64, (f64, f64)>,
    ways: Vec<Way>,
    relations: Vec<Relation>,
}

/// Every building, then every other closed way. Anything with a node or a way outside the extract is left out. The
/// identifier of a relation begins with `r`, since a way may have the same number.
pub(super) fn osm(text: &str, shapes: &mut Shapes) -> Result<(), Error> {
    let Extract { nodes, ways, relations } = read(text)?;
    let by_id: HashMap<&str, &Way> = ways.iter().map(|way| (way.id.as_str(), way)).collect();
    let corners = |ring: &[i64]| -> Option<Vec<(f64, f64)>> {
        ring.iter().map(|node| nodes.get(node).copied()).collect()
    };
    let is_building = |way: &&Way| way.is_closed() && way.tags.is_building;
    for way in ways.iter().filter(is_building) {
        if let Some(ring) = corners(&way.nodes) {
            shapes.ring(Some(way.id.clone()), way.tags.shown(), ring.into_iter(), 0)?;
        }
    }
    let mut walked = 0_usize;
    let mut in_relations: HashSet<&str> = HashSet::new();
    for relation in relations.iter().filter(|relation| relation.tags.is_building) {
        in_relations.extend(relation.outer.iter().chain(&relation.inner).map(String::as_str));
        let members: Option<Vec<&Way>> =
            relation.outer.iter().map(|id| by_id.get(id.as_str()).copied()).collect();
        // A way that is itself a building was already taken above.
        let Some(members) =
            members.filter(|ways| !matches!(ways[..], [only] if is_building(&only)))
        else {
            continue;
        };
        walked += members.iter().map(|way| way.nodes.len()).sum::<usize>();
        if walked > MOST_WALKED {
            return Err(wrong(
                "the relations of the map have too many corners; save the part with the house",
            ));
        }
        let rings = joined(&members);
        let several = rings.len() > 1;
        let holes = if several { 0 } else { relation.inner.len() };
        for (i, ring) in rings.iter().enumerate() {
            let part = if several { format!(".{}", i + 1) } else { String::new() };
            let id = format!("r{}{part}", relation.id);
            if let Some(ring) = corners(ring) {
                shapes.ring(Some(id), relation.tags.shown(), ring.into_iter(), holes)?;
            }
        }
    }
    let others = ways.iter().filter(|way| way.is_closed() && !way.tags.is_building);
    for way in others.filter(|way| !in_relations.contains(way.id.as_str())) {
        if let Some(ring) = corners(&way.nodes) {
            shapes.ring(Some(way.id.clone()), way.tags.shown(), ring.into_iter(), 0)?;
        }
    }
    Ok(())
}

/// The rings that the ways form when joined end to end, in either direction; empty if one of them stays open.
fn joined(ways: &[&Way]) -> Vec<Vec<i64>> {
    let mut left: Vec<&[i64]> = ways.iter().map(|way| &way.nodes[..]).collect();
    if left.len() > MOST_MEMBERS || left.iter().any(|nodes| nodes.len() < 2) {
        return Vec::new();
    }
    let mut rings: Vec<Vec<i64>> = Vec::new();
    while let Some(first) = left.pop() {
        let mut ring = first.to_vec();
        while ring.first() != ring.last() {
            let Some(&end) = ring.last() else { return Vec::new() };
            let next = left
                .iter()
                .position(|nodes| nodes.first() == Some(&end) || nodes.last() == Some(&end));
            let Some(next) = next else { return Vec::new() };
            let nodes = left.swap_remove(next);
            if nodes.first() == Some(&end) {
                ring.extend(&nodes[1..]);
            } else {
                ring.extend(nodes[..nodes.len() - 1].iter().rev());
            }
        }
        rings.push(ring);
    }
    rings.reverse();
    rings
}

fn read(text: &str) -> Result<Extract, Error> {
    let mut reader = Reader::from_str(text);
    let mut extract = Extract::default();
    let (mut way, mut relation): (Option<Way>, Option<Relation>) = (None, None);
    loop {
        let event = reader
            .read_event()
            .map_err(|error| wrong(format!("the map is no well-formed XML: {error}")))?;
        match event {
            Event::Start(start) | Event::Empty(start) => match start.name().as_ref() {
                "node" => extract.nodes.extend(node(&start)),
                "way" => {
                    let id = attribute(&start, "id").unwrap_or_default();
                    way = Some(Way { id, ..Way::default() });
                }
                "relation" => {
                    let id = attribute(&start, "id").unwrap_or_default();
                    relation = Some(Relation { id, ..Relation::default() });
                }
                "nd" => {
                    let node = attribute(&start, "ref").and_then(|id| id.parse::<i64>().ok());
                    way.iter_mut().for_each(|way| way.nodes.extend(node));
                }
                "member" => relation.iter_mut().for_each(|relation| member(relation, &start)),
                "tag" => {
                    let tags = way.as_mut().map(|way| &mut way.tags);
                    let tags = tags.or(relation.as_mut().map(|relation| &mut relation.tags));
                    tags.into_iter().for_each(|tags| tags.add(&start));
                }
                _ => {}
            },
            Event::End(end) if end.name().as_ref() == "way" => extract.ways.extend(way.take()),
            Event::End(end) if end.name().as_ref() == "relation" => {
                extract.relations.extend(relation.take());
            }
            Event::Eof => return Ok(extract),
            _ => {}
        }
    }
}

fn node(start: &BytesStart<'_>) -> Option<(i64, (f64, f64))> {
    let number = |key: &str| attribute(start, key)?.parse::<f64>().ok();
    let id = attribute(start, "id")?.parse().ok()?;
    Some((id, (number("lon")?, number("lat")?)))
}

fn member(relation: &mut Relation, start: &BytesStart<'_>) {
    let Some(id) =
        attribute(start, "ref").filter(|_| attribute(start, "type").as_deref() == Some("way"))
    else {
        return;
    };
    match attribute(start, "role").as_deref() {
        Some("outer" | "outline" | "") | None => relation.outer.push(id),
        Some("inner") => relation.inner.push(id),
        Some(_) => {}
    }
}

/// The value of an attribute, with character references resolved.
fn attribute(start: &BytesStart<'_>, key: &str) -> Option<String> {
    let found = start.try_get_attribute(key).ok()??;
    found
        .normalized_value(quick_xml::XmlVersion::Implicit1_0)
        .ok()
        .map(std::borrow::Cow::into_owned)
}
