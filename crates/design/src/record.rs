//! How a step of the work is written so that it is recorded: a formula by [`by!`](crate::by), plain
//! arithmetic by [`reckon!`](crate::reckon), a set of values by [`record!`](macro@crate::record), and words that
//! only a trail needs by [`say!`](crate::say).

use crate::provenance::Pair;
use stillrise_handbook::page::{Kind, Page};

/// Print units of a page's result.
#[must_use]
pub fn out_units(page: &'static Page) -> Option<Pair> {
    match page.out.kind {
        Kind::Quantity(_) => page.out.units,
        _ => None,
    }
}

#[doc(hidden)]
pub fn copy<T: Clone>(value: &T) -> T {
    value.clone()
}

/// Text for the trail: made only when `T` records.
#[macro_export]
macro_rules! say {
    ($t:ident, $($arg:tt)*) => {
        if <$t as $crate::provenance::Trail>::RECORDS { format!($($arg)*) } else { String::new() }
    };
}

/// Calls a handbook formula on [`Val`](crate::provenance::Val)s and records the step:
/// `by!(t, "rise of the design droplet", stokes_rise::rise(d, rho_w, rho_o, mu))?`.
#[macro_export]
macro_rules! by {
    ($t:expr, $label:expr, $page:ident :: $name:ident ( $($arg:expr),+ $(,)? )) => {
        $page::$name($($crate::record::copy(&($arg).q)),+).map_err($crate::provenance::Stop::from).map(|q| {
            let at = $crate::provenance::Trail::push($t, || $crate::provenance::entry(
                $label, &q, $crate::record::out_units(&$page::PAGE),
                $crate::provenance::Origin::Derived { page: &$page::PAGE, inputs: vec![$(($arg).at),+] },
            ));
            $crate::provenance::Val { q, at }
        })
    };
}

/// Puts [`Val`](crate::provenance::Val)s together under one name, as a group of arguments:
/// `gather!(t, "tank as droplets meet it", Tank { v_0: v, model: m, index: n })`.
#[macro_export]
macro_rules! gather {
    ($t:expr, $label:expr, $group:ident { $($field:ident : $value:expr),+ $(,)? }) => {{
        let q = $group { $($field: $crate::record::copy(&($value).q)),+ };
        let at = $crate::provenance::Trail::push($t, || $crate::provenance::entry(
            $label, &q, None,
            $crate::provenance::Origin::Gathered { inputs: vec![$(($value).at),+] },
        ));
        $crate::provenance::Val { q, at }
    }};
}

/// Plain arithmetic on [`Val`](crate::provenance::Val)s, recorded with its text:
/// `reckon!(t, "fall" [FT, M], (inlet = a, outlet = b) inlet - outlet)`.
#[macro_export]
macro_rules! reckon {
    ($t:expr, $label:expr, [$us:ident, $si:ident], ($($name:ident = $value:expr),+ $(,)?) $text:expr) => {{
        let q = {
            $(let $name = $crate::record::copy(&($value).q);)+
            $text
        };
        let at = $crate::provenance::Trail::push($t, || $crate::provenance::entry(
            $label, &q,
            Some((&stillrise_units::catalog::$us, &stillrise_units::catalog::$si)),
            $crate::provenance::Origin::Reckoned {
                text: stringify!($text),
                inputs: vec![$((stringify!($name), ($value).at)),+],
            },
        ));
        $crate::provenance::Val { q, at }
    }};
}

/// Declares a struct of [`Val`](crate::provenance::Val)s and the walk over its fields, so that report and JSON need no
/// list of their own.
#[macro_export]
macro_rules! record {
    ($(#[$doc:meta])* $name:ident { $($(#[$fdoc:meta])* $field:ident : $ty:ty;)+ }) => {
        $(#[$doc])*
        #[derive(Debug, Clone)]
        pub struct $name { $($(#[$fdoc])* pub $field: $crate::provenance::Val<$ty>,)+ }
        impl $name {
            /// Field names and their places in the trail, in order.
            #[must_use]
            pub fn fields(&self) -> Vec<(&'static str, $crate::provenance::Node)> {
                vec![$((stringify!($field), self.$field.at)),+]
            }
        }
    };
}
