//! The JSON report: its keys, its schema, and lines that add up to the last digit.

use serde_json::Value;

use super::{PLAIN, fairfoot, sketch, text};

fn value(arguments: &[&str], stdin: &str) -> Value {
    let run = fairfoot().args(arguments).write_stdin(stdin).assert().success();
    serde_json::from_str(&text(&run.get_output().stdout)).expect("JSON")
}

/// The report of every sketch that ships with the program.
fn reports() -> Vec<(String, Value)> {
    let mut reports = Vec::new();
    for entry in std::fs::read_dir(sketch("")).unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_some_and(|ending| ending == "sides") {
            let report = value(&["reconcile", "--json", path.to_str().unwrap()], "");
            reports.push((path.display().to_string(), report));
        }
    }
    assert!(reports.len() >= 10);
    reports
}

/// A decimal text in millionths.
fn millionths(text: &str) -> i128 {
    let (sign, digits) = text.strip_prefix('-').map_or((1, text), |digits| (-1, digits));
    let (whole, decimals) = digits.split_once('.').unwrap_or((digits, ""));
    assert!(decimals.len() <= 6 && !decimals.ends_with('0'), "{text}");
    let whole: i128 = whole.parse().unwrap();
    sign * (whole * 1_000_000 + format!("{decimals:0<6}").parse::<i128>().unwrap())
}

/// `tests/schema`, a separate package, checks that reports follow it.
#[test]
fn the_schema_asks_for_every_key_of_a_report() {
    let schema = value(&["reconcile", "--schema"], "");
    let asked: Vec<&str> =
        schema["required"].as_array().unwrap().iter().map(|key| key.as_str().unwrap()).collect();
    for key in ["format", "source", "totals", "spaces", "figures", "warnings"] {
        assert!(asked.contains(&key), "{key}: {asked:?}");
    }
}

#[test]
fn the_lines_of_every_bridge_add_up_to_the_last_digit() {
    for (name, report) in reports() {
        for figure in report["figures"].as_array().unwrap() {
            let lines = figure["bridge"].as_array().unwrap();
            let sum: i128 =
                lines.iter().map(|line| millionths(line["sq_ft"].as_str().unwrap())).sum();
            assert_eq!(sum, millionths(figure["gap"].as_str().unwrap()), "{name}");
            let start = millionths(figure["start"].as_str().unwrap());
            let area = millionths(&figure["sq_ft"].to_string().replace(".0", ""));
            assert_eq!(area - start, sum, "{name}");
            for wanted in ["face", "rounding", "not explained"] {
                assert!(lines.iter().any(|line| line["line"] == wanted), "{name}: {wanted}");
            }
        }
    }
}

#[test]
fn the_shares_of_recorded_sides_add_up_to_their_line() {
    let mut seen = 0;
    for (name, report) in reports() {
        for figure in report["figures"].as_array().unwrap() {
            let shares = figure["recorded_sides"].as_array().unwrap();
            let line = figure["bridge"]
                .as_array()
                .unwrap()
                .iter()
                .find(|line| line["line"] == "recorded sides");
            let Some(line) = line.filter(|_| !shares.is_empty()) else { continue };
            let sum: i128 =
                shares.iter().map(|share| millionths(share["sq_ft"].as_str().unwrap())).sum();
            let off = (sum - millionths(line["sq_ft"].as_str().unwrap())).abs();
            // Each share is printed to a millionth.
            assert!(off <= i128::try_from(shares.len()).unwrap(), "{name}: {off}");
            seen += 1;
        }
    }
    assert!(seen > 0, "a sketch with recorded sides is among them");
}

#[test]
fn the_keys_of_format_1_are_there() {
    let report = value(&["reconcile", "--json", "-"], PLAIN);
    assert_eq!(report["format"], 1);
    assert_eq!(report["source"]["file"], "standard input");
    assert_eq!(report["source"]["sha256"].as_str().unwrap().len(), 64);
    let gross = &report["totals"]["gross"];
    assert_eq!(gross["tenth_foot"]["exact"], "1205.58"); // 28.3 × 42.6
    assert_eq!(gross["tenth_foot"]["sq_ft"], 1206);
    assert_eq!(gross["whole_foot"]["sq_ft"], 1204); // 28 × 43
    assert_eq!(gross["whole_foot"]["low"], 1176); // 28 × 42: 42.583 may be rounded either way
    assert_eq!(gross["whole_foot"]["high"], 1204);
    assert_eq!(gross["whole_foot"]["widest_high"], 1247); // 29 × 43
    assert_eq!(gross["as_measured"]["exact"], "1206.527778"); // 340 × 511 / 144
    assert_eq!(report["totals"]["below_grade_gross"], Value::Null);
    let side = &report["spaces"][0]["sides"][1];
    assert_eq!(side["direction"], "east");
    assert_eq!(side["typed"], "42' 7\"");
    assert_eq!(side["feet"], "42.583333");
    assert_eq!(side["how"], "measured");
    assert_eq!(report["figures"][0]["rounding"]["could_explain"], "no"); // 1,176 or 1,204, not 1,300
    // Z: 340 in and 511 in on a 28.33 × 42.58 rectangle: √((28.333² + 42.583²)/12)
    assert_eq!(report["figures"][0]["rounding"]["typical"], "14.8");
}

#[test]
fn the_worth_of_a_gap_has_its_own_key_or_is_absent() {
    let report = value(&["reconcile", "--json", "-"], PLAIN);
    assert!(report.get("worth").is_none(), "PLAIN says nothing of values");
    // 1,206 measured; 1,200 is smaller, 1,300 has 94 more: 195,000 × 94 ÷ 1,300 = 14,100.
    let values = "place texas\nnotice 2026-04-17\nvalue market $260,000 improvement $195,000\n";
    let text = format!("{values}{}", PLAIN.replace("1,200", "1,300"));
    let report = value(&["reconcile", "--json", "--today", "2026-05-06", "-"], &text);
    let worth = &report["worth"];
    assert_eq!(worth["gap"]["sq_ft"], 94);
    assert_eq!(worth["ways"][0]["gives"]["dollars"], 14_100);
    assert_eq!(worth["ways"][0]["gives"]["exact"], "14100");
    assert_eq!(worth["tax"], Value::Null, "what is taxed is not given");
    let protest = &worth["dates"]["days"][0];
    assert_eq!(
        (&protest["day"], &protest["unmoved"]),
        (&"2026-05-18".into(), &"2026-05-17".into())
    );
    assert_eq!((&protest["section"], &protest["days_left"]), (&"41.44(a)(1)".into(), &12.into()));
    let report = value(&["reconcile", "--json", "-"], &text);
    assert_eq!(report["worth"]["dates"]["days"][0]["days_left"], Value::Null);
}

#[test]
fn area_prints_the_same_keys_without_the_figures() {
    let report = value(&["area", "--json", "-"], PLAIN);
    assert_eq!(report["totals"]["gross"]["tenth_foot"]["exact"], "1205.58");
    assert!(report.get("figures").is_none());
}

#[test]
fn check_prints_errors_as_json() {
    let run = fairfoot().args(["check", "--json", "-"]).write_stdin("nroth 5'\n").assert().code(1);
    let list: Value = serde_json::from_str(&text(&run.get_output().stdout)).unwrap();
    assert_eq!(list[0]["word"], "unknown-word");
    assert_eq!((&list[0]["line"], &list[0]["column"]), (&1.into(), &1.into()));
    assert_eq!(list[0]["severity"], "error");
    assert_eq!(list[0]["help"][0], "did you mean `north`?");
}

#[test]
fn settings_change_the_figures() {
    let half = PLAIN.replace("28' 4\"", "28' 6\"");
    let whole = |halves: &str| {
        let report = value(&["area", "--json", "--ties", halves, "-"], &half);
        report["totals"]["gross"]["whole_foot"]["sq_ft"].as_i64().unwrap()
    };
    assert_eq!((whole("up"), whole("down"), whole("even")), (29 * 43, 28 * 43, 28 * 43));
    let inch = value(&["area", "--json", "--step", "inch", "-"], PLAIN);
    assert_eq!(inch["totals"]["gross"]["tenth_foot"]["exact"], "1206.527778");
    let near = value(&["area", "--json", "--reach", "1/4\"", "-"], PLAIN);
    assert_eq!(near["totals"]["gross"]["whole_foot"]["low"], 1204);
}
