//! Whether what is supported so much is right so often.

use super::office::{House, Random, by_chance, something_else};
use super::rates::explained;

const HOUSES: u64 = 2_500;

/// Lines, right ones, and the sum of supports, for each tenth of support.
fn tenths() -> [(u32, u32, f64); 10] {
    let mut tenths = [(0, 0, 0.0); 10];
    for seed in 0..HOUSES {
        let mut random = Random::new(seed + 500_000);
        let house = House::random(&mut random);
        let other = random.unit() < 0.15;
        let record = if other {
            something_else(&house, &mut random)
        } else {
            by_chance(&house, &mut random)
        };
        let (list, _) = explained(&house, &record);
        for (labels, support) in list {
            let tenth = &mut tenths[((10.0 * support) as usize).min(9)];
            tenth.0 += 1;
            tenth.1 += u32::from(record.labels.as_ref() == Some(&labels));
            tenth.2 += support;
        }
    }
    tenths
}

#[test]
fn each_tenth_of_support_comes_true_as_often_as_it_says() {
    let mut faults = Vec::new();
    println!("| stated support | lines | mean stated | came true |\n|---|---|---|---|");
    for (i, (lines, right, sum)) in tenths().into_iter().enumerate() {
        let (stated, share) =
            (sum / f64::from(lines.max(1)), f64::from(right) / f64::from(lines.max(1)));
        println!(
            "| {:.1} to {:.1} | {lines} | {stated:.2} | {share:.2} |",
            i as f64 / 10.0,
            (i + 1) as f64 / 10.0
        );
        if lines >= 100 && (share - stated).abs() > 0.07 {
            faults.push(format!("{i}: {stated:.3} stated, {share:.3} came true"));
        }
    }
    assert!(faults.is_empty(), "{faults:?}");
}
