//! What people call a space, and the kinds of the format that such a word may stand for.

/// The kinds that a noun may stand for, the likeliest first; none if the word is not known as a space.
pub(super) fn kinds(noun: &str) -> &'static [&'static str] {
    match noun {
        "living" => &["living"],
        "room" | "rooms" | "bedroom" | "bedrooms" | "kitchen" | "kitchenette" | "den" | "study"
        | "office" | "loft" | "nook" | "hall" | "hallway" | "library" | "parlor" | "bath"
        | "bathroom" | "suite" | "apartment" | "addition" | "extension" | "ext" | "dormer"
        | "dormers" | "bump-out" | "bumpout" | "wing" | "ell" | "laundry" | "mudroom"
        | "sunroom" | "gym" | "playroom" | "nursery" | "alcove" | "vestibule" | "quarters"
        | "annex" | "house" | "home" | "ballroom" | "conservatory" | "solarium" | "efficiency"
        | "washroom" | "powder" | "corridor" | "casita" | "mudhall" => &["living"],
        "pantry" | "larder" => &["living", "storage"],
        "unfinished" | "attic" | "crawlspace" | "crawl" => &["unfinished"],
        "porch" | "porches" | "veranda" | "verandah" | "lanai" | "stoop" | "portico" | "entry"
        | "entryway" | "gallery" => &["porch"],
        "patio" | "patios" | "terrace" | "pad" | "slab" | "pergola" | "ramada" | "arbor"
        | "trellis" | "cover" | "awning" | "cabana" | "palapa" | "spa" | "tub" | "hardscape" => {
            &["patio"]
        }
        "pavilion" | "gazebo" => &["patio", "outbuilding"],
        "deck" | "decks" | "dock" | "boardwalk" => &["deck"],
        "balcony" | "balconies" | "overlook" => &["balcony"],
        "breezeway" | "dogtrot" => &["breezeway"],
        "carport" | "porte-cochere" => &["carport"],
        "garage" | "garages" | "gar" => &["garage"],
        "closet" => &["living", "storage"],
        "storage" | "locker" | "utility" => &["storage"],
        "cellar" => &["storage", "unfinished", "outbuilding"],
        "lean-to" | "leanto" => &["storage", "outbuilding", "porch"],
        "outbuilding" | "shed" | "sheds" | "barn" | "workshop" | "shop" | "greenhouse" | "coop"
        | "henhouse" | "stable" | "silo" | "cabin" | "pumphouse" | "playhouse" | "kennel"
        | "studio" | "boathouse" | "bunkhouse" | "cottage" | "sauna" | "smokehouse"
        | "doghouse" | "hangar" | "privy" | "outhouse" | "springhouse" | "hut" | "granary"
        | "corncrib" | "treehouse" | "birdhouse" | "poolhouse" | "guesthouse" | "glasshouse"
        | "tack" | "woodshed" | "shack" | "building" | "bldg" | "trailer" | "yurt" | "bin"
        | "crib" | "stall" | "stalls" | "sheep-shed" | "pigsty" | "quonset" => &["outbuilding"],
        "stair" | "stairs" | "stairwell" | "staircase" | "stairway" | "landing" | "steps" => {
            &["stair"]
        }
        "open" | "foyer" | "void" | "atrium" | "opening" => &["open"],
        "low" | "eaves" | "kneewall" | "knee" => &["low"],
        "court" | "courtyard" | "lightwell" => &["court"],
        _ => &[],
    }
}

/// Words before `house` that make it a building of its own.
pub(super) const HOUSES_APART: [&str; 30] = [
    "cistern", "tea", "summer", "bake", "dove", "spa", "chicken", "hen", "pool", "guest", "pump",
    "tree", "play", "dog", "bunk", "boat", "well", "smoke", "out", "garden", "carriage", "pig",
    "bird", "ice", "spring", "potting", "tool", "wash", "engine", "sugar",
];

/// Whether a word is known to be what people call a space.
pub(super) fn is_known(word: &str) -> bool {
    !kinds(word).is_empty()
}
