//! Uses the library as an outside program would, without the command line and without any feature, relying only on
//! the documentation of the public items.
//!
//! `.ci/run` builds and runs it with no features; it also runs with them.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops with a panic")]

use fairfoot::areas::Rule;
use fairfoot::diagnostic::{Severity, Word};
use fairfoot::reconcile::{BridgeStep, CouldExplain};
use fairfoot::report::Look;
use fairfoot::units::{Area, Currency, Halves, Length, Money, Step};
use fairfoot::{Areas, House, Reconciliation, Settings, Source, Weights};

const BRICK: &str = r#"
property "3 Alder Street, Juniper County"
record 1,300 sq ft
level "Ground floor"
  living "House"
    north 30' 3"
    east  40' 8"
    south 30' 3"
    west  40' 8"
"#;

fn worked_out(text: &str) -> Result<Reconciliation, fairfoot::Diagnostics> {
    fairfoot::read("brick.sides", text)?.areas(&Settings::default())?.reconcile(&Weights::default())
}

#[test]
fn the_library_goes_from_text_to_report() {
    let result = worked_out(BRICK).unwrap();
    let gross = result.areas().gross();
    // 30' 3" is 30.25, to the tenth 30.3 (halves up); 40' 8" is 40.67, to the tenth 40.7.
    assert_eq!(gross.tenth_foot().sq_ft_text(), "1233.21");
    assert_eq!(gross.whole_foot().whole_sq_ft(), 30 * 41);
    let record = &result.figures()[0];
    assert_eq!(record.name(), "record");
    // 1,300 less 30.3 × 40.7.
    assert_eq!(record.gap().sq_ft_text(), "66.79");
    let rounding = record.line(BridgeStep::Rounding).unwrap();
    assert_eq!(rounding.area().sq_ft_text(), "-3.21");
    assert_eq!(record.rounding_test().could_explain(), Some(CouldExplain::No));
    let text = result.report().text(Look { width: 72, ..Look::default() });
    assert!(text.lines().all(|line| line.chars().count() <= 72), "{text}");
    assert!(text.contains("1,233"), "{text}");
}

#[test]
fn a_step_can_be_kept_and_reused() {
    let house: House = fairfoot::read("brick.sides", BRICK).unwrap();
    let settings = Settings { halves: Halves::Down, ..Settings::default() };
    let (up, down): (Areas, Areas) =
        (house.areas(&Settings::default()).unwrap(), house.areas(&settings).unwrap());
    // 30.25 rounds to 30.2 with halves down: 30.2 × 40.7.
    assert_eq!(down.gross().tenth_foot().sq_ft_text(), "1229.14");
    assert_ne!(up.gross().tenth_foot(), down.gross().tenth_foot());
    let again = down.clone().reconcile(&Weights::default()).unwrap();
    assert_eq!(again.settings().halves, Halves::Down);
    assert_eq!(again.house().source().name(), "brick.sides");
    assert_eq!(settings.whole_foot(), Rule { step: Step::WholeFoot, halves: Halves::Down });
}

#[test]
fn all_errors_are_returned_with_their_positions() {
    let errors = worked_out("level \"G\"\nlivng \"House\"\nnorth 12-6\n").unwrap_err();
    let found: Vec<Word> = errors.list().iter().map(|error| error.word()).collect();
    assert!(found.contains(&Word::UnknownWord), "{found:?}");
    for error in errors.list() {
        assert!(Word::ALL.contains(&error.word()));
        assert_eq!(error.is_error(), error.word().severity() == Severity::Error);
        assert!(errors.source().line(error.span().start) >= 1);
    }
    assert!(errors.to_string().contains("livng"));
}

#[test]
fn quantities_are_exact() {
    let wall: Length = "12' 6\"".parse().unwrap();
    assert_eq!(wall.nm(), 3_810_000_000);
    assert_eq!(Area::rectangle(wall, wall).sq_ft_text(), "156.25");
    assert_eq!(Money::new(0.into(), Currency::Dollar).whole_text(), "$0");
    assert!("12-6".parse::<Length>().is_err());
}

#[test]
fn a_sketch_is_tidied_without_closing() {
    let source = Source::new("open.sides", "LEVEL \"G\"\nliving \"H\"\nn 5'\n");
    let tidied = fairfoot::sketch::parse(source).unwrap().tidied();
    assert_eq!(tidied, "level \"G\"\n  living \"H\"\n    north 5'\n");
}

#[test]
fn values_can_be_sent_to_other_threads() {
    fn is_shared<T: Send + Sync + 'static>() {}
    is_shared::<House>();
    is_shared::<Areas>();
    is_shared::<Reconciliation>();
    is_shared::<fairfoot::Diagnostics>();
}
