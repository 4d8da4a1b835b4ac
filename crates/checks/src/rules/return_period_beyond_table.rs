//! Rule: return period beyond the table

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::YR;
use stillrise_units::print::digits;
use stillrise_units::{Time, Typed};

rule! {
    "return-period-beyond-table" "Return period beyond the rain table", Enquiry;
    client "The rain table does not reach the rare storm that is asked for."
    looks "The return period asked for against the columns of the rain table: beyond the last column fails, between two columns passes on the rarer one. Where the return period is assumed in a range that goes beyond, it cannot judge."
    matters "The table's rarest column is too little for a rarer storm, and nothing says by how much."
    remedy "A table that reaches the return period, or the authority's word that the shorter one will do."
    source "Geometry of the table; our proposal to refuse extrapolation"
    limits "Between two columns the rarer one is taken, not an interpolation."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(storm) = s.design.basis.as_ref().and_then(|b| b.storm.as_ref()) else {
        return Verdict::skips("no rain is counted that runs to the separator");
    };
    let (Some(years), Some(column)) = (storm.years, storm.column_years) else {
        return Verdict::skips("there is no rain table");
    };
    let asked = years.q.in_unit(&YR);
    let says = format!("{} yr are asked for, the column of {} yr was taken", digits(asked, 4), digits(column, 4));
    if column < asked * (1.0 - 1e-9) {
        Verdict::fails(says, years.at)
    } else {
        let reaches = |asked: Time| column >= asked.in_unit(&YR) * (1.0 - 1e-9);
        s.rests_on(&says, years, (&YR, &YR), reaches).unwrap_or_else(|| Verdict::passes(says))
    }
}
