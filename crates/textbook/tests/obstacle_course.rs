//! Convergence of the shell obstacle course.

use axlebow_textbook::obstacle_course::*;

#[test]
fn show() {
    for n in [4, 8, 16, 32] {
        let t = TwistedStrip { thickness: 0.32, force: 1.0 }.deflections(n / 2).unwrap();
        let s = TwistedStrip { thickness: 0.0032, force: 1e-6 }.deflections(n / 2).unwrap();
        println!(
            "{n:3} cyl {:.5} roof {:.5} {:.5} hemi {:.5} strip {:.5} {:.5} thin {:.5} {:.5}",
            pinched_cylinder(n).unwrap() / 1.8248e-5,
            scordelis_lo_roof(n).unwrap() / 0.3006,
            scordelis_lo_crown(n).unwrap() / 0.04507,
            pinched_hemisphere(n).unwrap() / 0.093516,
            t[0] / 5.4293e-3,
            t[1] / 1.7496e-3,
            s[0] / 5.256e-3,
            s[1] / 1.294e-3
        );
    }
}
#[test]
fn show_cases() {
    for case in axlebow_textbook::cases()
        .iter()
        .filter(|case| case.topic.contains("shell") || case.topic.contains("walls"))
    {
        let start = std::time::Instant::now();
        match case.outcome() {
            Ok(c) => println!(
                "{} {:.5} {} ours {:.6e} printed {:.6e} {:?}",
                if c.passed { "ok  " } else { "FAIL" },
                c.ours / c.printed,
                case.id,
                c.ours,
                c.printed,
                start.elapsed()
            ),
            Err(e) => println!("ERR {} {e}", case.id),
        }
    }
}
