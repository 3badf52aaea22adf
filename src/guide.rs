//! A guide to the library: it takes a house from text to pages, and shows what can go wrong on the way.
//!
//! # The first house
//!
//! A sides file is a text that lists the walls of a house in walking order; `sketches/README.md` in the repository
//! describes the format. [`read`](crate::read()) checks it and returns a [`House`](crate::House), which exists only
//! if every outline in it closes. Each later stage is built from the one before and keeps it, so no stage can be given
//! values of another house or other settings.
//!
//! Each area is computed under two rules: every wall rounded to a tenth of a foot (or to the inch), or to the whole
//! foot. A gap is the published figure minus the measured area: positive if the record is too large.
//!
//! ```
//! use fairfoot::{Settings, Weights};
//!
//! let text = r#"
//! record 1,250 sq ft
//! level "Ground floor"
//!   living "House"
//!     north 28' 4"
//!     east  42' 7 1/2"
//!     south 28' 4"
//!     west  42' 7 1/2"
//! "#;
//! let house = fairfoot::read("cottage.sides", text)?;
//! let areas = house.areas(&Settings::default())?;
//! let result = areas.reconcile(&Weights::default())?;
//! // 28.3 × 42.6 and 28 × 43, computed by hand.
//! assert_eq!(result.areas().gross().tenth_foot().sq_ft_text(), "1205.58");
//! assert_eq!(result.areas().gross().whole_foot().whole_sq_ft(), 1_204);
//! assert_eq!(result.figures()[0].gap().sq_ft_text(), "44.42");
//! # Ok::<(), fairfoot::Diagnostics>(())
//! ```
//!
//! # Errors
//!
//! A text with errors gives [`Diagnostics`](crate::Diagnostics): all errors at once, then all warnings, each in file
//! order. Each has a stable [code word](crate::diagnostic::Word), a place, a message, and help, which is often a line
//! that can be typed as is. The warnings of a file without errors are in
//! [`Reconciliation::warnings`](crate::Reconciliation::warnings). Mistakes of the caller, such as weights that are not
//! probabilities, are an [`Error`](crate::Error) instead.
//!
//! ```
//! use fairfoot::diagnostic::Word;
//!
//! let text = "level \"Ground floor\"\nliving \"House\"\nnorth 28'\neast 42'\nsouth 28'\nwest 40'";
//! let errors = fairfoot::read("open.sides", text).expect_err("it ends 2' from its start");
//! assert_eq!(errors.list()[0].word(), Word::DoesNotClose);
//! // The traverse is 2 feet short on its way west, so it ends east of its start.
//! assert!(errors.list()[0].message().contains("2' east"));
//! println!("{errors}"); // each is drawn under the text it is about
//! ```
//!
//! # Areas
//!
//! [`Areas`](crate::Areas) has every space and the totals under both rules, with the range of areas possible when
//! walls are rounded to the foot. An [`Area`](crate::units::Area) is exact; it is rounded only when it is shown.
//!
//! ```
//! use fairfoot::Settings;
//! use fairfoot::units::{Area, Length};
//!
//! let text = "level \"Ground floor\"\nliving \"House\"\nnorth 28'\neast 42' 5\"\nsouth 28'\nwest 42' 5\"";
//! let areas = fairfoot::read("range.sides", text)?.areas(&Settings::default())?;
//! let range = areas.gross().range().ok_or("few enough ways to round")?;
//! // 42' 5" may be rounded to 42 or 43 ft.
//! assert_eq!(range.low, Area::rectangle("28'".parse()?, "42'".parse()?));
//! assert_eq!(range.high, Area::rectangle("28'".parse()?, "43'".parse()?));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! # Causes
//!
//! [`Areas::reconcile`](crate::Areas::reconcile) divides the gap to each published figure into steps that add up to
//! it exactly. [`Weights`](crate::Weights) state how common each cause is assumed to be; they are data and can be
//! read from JSON.
//!
//! ```
//! use fairfoot::units::Area;
//! use fairfoot::{Settings, Weights};
//!
//! let text = "record 1,250 sq ft\nlevel \"G\"\nliving \"House\"\nnorth 28'\neast 42'\nsouth 28'\nwest 42'";
//! let result = fairfoot::read("gap.sides", text)?.areas(&Settings::default())?.reconcile(&Weights::default())?;
//! let record = &result.figures()[0];
//! let steps: Area = record.lines().iter().map(|line| line.area()).sum();
//! assert_eq!(steps, record.gap());
//! # Ok::<(), fairfoot::Diagnostics>(())
//! ```
//!
//! # Reports and pages
//!
//! [`Reconciliation::report`](crate::Reconciliation::report) gives text for a terminal and data for JSON;
//! [`Reconciliation::pages`](crate::Reconciliation::pages) draws the pages. The same input gives the same bytes on
//! every machine.
//!
//! ```
//! use fairfoot::report::Look;
//! use fairfoot::{Paper, Settings, Weights};
//!
//! let text = "level \"G\"\nliving \"Shed\"\nnorth 8'\neast 12'\nsouth 8'\nwest 12'";
//! let result = fairfoot::read("shed.sides", text)?.areas(&Settings::default())?.reconcile(&Weights::default())?;
//! assert!(result.report().text(Look::default()).contains("96 sq ft"));
//! assert!(result.pages(Paper::Letter)?.pdf()?.starts_with(b"%PDF"));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! # Many houses
//!
//! [`batch`](crate::batch) computes one house after another and returns each as rows. A house with an error becomes
//! a row too; it does not stop the others.
//!
//! ```
//! use fairfoot::batch::{Input, BatchOptions, compute};
//!
//! let sides = "level \"G\"\nliving \"Shed\"\nnorth 8'\neast 12'\nsouth 8'\nwest 12'";
//! let shed = compute("shed", &Input::Sides(sides.to_owned()), &BatchOptions::default());
//! assert_eq!(shed.tenth_foot, Some(96));
//! let wrong = compute("wrong", &Input::Sides("living".to_owned()), &BatchOptions::default());
//! assert!(!wrong.faults.is_empty());
//! ```
