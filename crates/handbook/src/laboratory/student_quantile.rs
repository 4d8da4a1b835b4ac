//! Formula: quantile of Student's t distribution

use crate::formula;
use crate::page::Evidence::{Library, Limit};
use crate::sources::ABRAMOWITZ_STEGUN;
use stillrise_units::Ratio;
use stillrise_units::math::{acos, floor, root, sqrt};

const SCIPY: &str = "scipy 1.17.1, stats.t.ppf";

formula! {
    /// Value that a share of Student's t distribution lies below, for a whole number of degrees of freedom.
    ///
    /// The mean of few results is known less well than their scatter suggests, because that scatter is itself known
    /// from few: three results take 4.3 deviations of the mean where many take 1.96.
    "student-quantile" "Quantile of Student's t distribution"
    fn t(
        freedom: Ratio = "nu" "degrees of freedom, one less than the results" [ONE, ONE: 1.0 .. 1000.0 in 1.0 .. 10000.0];
        share: Ratio = "F" "share that lies below" [PERCENT, PERCENT: 50.0 .. 99.9 in 50.0 .. 99.9];
    ) -> Ratio = "t" "value" [ONE, ONE];
    solves [freedom ONE, share ONE => t ONE] { share => student_share(freedom, t) } by {
        // 99.9 % of the widest of them, that of one degree of freedom, lie below 319.
        root(0.0, 400.0, |t| student_share(freedom, t) - share)
    }
    helpers [student_share(f64, f64) "F" "share of Student's distribution below a value, by the finite sums 26.7.3 and 26.7.4 of the handbook"]
    sources [ABRAMOWITZ_STEGUN]
    checks [
        "freedom=1, share=97.5 %" => "12.706205", Library(SCIPY);
        "freedom=2, share=97.5 %" => "4.3026527", Library(SCIPY);
        "freedom=3, share=97.5 %" => "3.1824463", Library(SCIPY);
        "freedom=4, share=97.5 %" => "2.7764451", Library(SCIPY);
        "freedom=5, share=97.5 %" => "2.5705818", Library(SCIPY);
        "freedom=9, share=97.5 %" => "2.2621572", Library(SCIPY);
        "freedom=10, share=97.5 %" => "2.2281389", Library(SCIPY);
        "freedom=19, share=97.5 %" => "2.0930241", Library(SCIPY);
        "freedom=30, share=97.5 %" => "2.0422725", Library(SCIPY);
        "freedom=99, share=97.5 %" => "1.9842170", Library(SCIPY);
        "freedom=999, share=97.5 %" => "1.9623415", Library(SCIPY);
        "freedom=1, share=95 %" => "6.3137515", Library(SCIPY);
        "freedom=4, share=95 %" => "2.1318468", Library(SCIPY);
        "freedom=2, share=99.5 %" => "9.9248432", Library(SCIPY);
        "freedom=9, share=99.5 %" => "3.2498355", Library(SCIPY);
        "freedom=7, share=50 %" => "0", Limit("half lie on either side of nought");
        "freedom=1, share=75 %" => "1.00000", Limit("one degree of freedom is Cauchy's law, whose quartile is 1");
    ]
}

/// Share of Student's distribution below `t`, `t` not below zero.
fn student_share(freedom: f64, t: f64) -> f64 {
    let nu = floor(freedom + 0.5);
    let even = floor(nu / 2.0) * 2.0 >= nu;
    let cos = sqrt(nu / (nu + t * t));
    let sin = t / sqrt(nu + t * t);
    // The terms of either sum, each from the one before.
    let sum = |first: f64, mut factor: f64| {
        let (mut term, mut total) = (first, 0.0);
        while factor <= nu {
            total += term;
            term *= cos * cos * (factor - 1.0) / factor;
            factor += 2.0;
        }
        total
    };
    let within = if even {
        sin * sum(1.0, 2.0)
    } else {
        2.0 / core::f64::consts::PI * (acos(cos) + sin * sum(cos, 3.0))
    };
    0.5 + within / 2.0
}
