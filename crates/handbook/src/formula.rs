//! The macros that turn one definition into a typed function and its page.
//!
//! Order of a page, always the same; `separation/stokes_rise.rs` is the exemplar:
//!
//! ```text
//! formula! {
//!     /// What it computes, where it holds, traps.
//!     "id" "Title"
//!     fn name(
//!         quantity: Length = "symbol" "meaning" [US_UNIT, SI_UNIT: trusted..range in hard..domain];
//!         series: Series = "symbol|symbol" "meaning" {US_X, SI_X; US_Y, SI_Y};
//!         method: SomeChoice = "symbol" "meaning";
//!     ) with Group "word" ( more: Length = ..; )          // optional: arguments that also go together under one name
//!     -> Velocity = "symbol" "meaning" [US_UNIT, SI_UNIT];
//!     <body>
//!     constants [NAME "symbol", ..]                      // optional: f64 constants of the body
//!     helpers [name(Type, ..) "symbol" "meaning"; ..]    // optional: functions the body calls
//!     sources [SOURCE, ..]
//!     checks [
//!         "quantity=60 um, .." => "0.3098 mm/s", Evidence;
//!         "quantity=60 um, .." => "0.31 mm/s" within 0.02 "why", Evidence;
//!     ]
//! }
//! ```
//! Numbers of range and domain are in the SI print unit. The body has one of four forms:
//!
//! | form | body works on |
//! |---|---|
//! | `typed { .. }` | quantities: the compiler proves the dimensions |
//! | `reduced [a FT, b ONE => MIN] { .. }` | plain numbers in the stated units |
//! | `solves [a ONE => f ONE] { left => right } by { Option<f64> }` | a relation, and how its root is found |
//! | `maps [classes(d UM, f ONE), a M => ONE] { .. }` | a Series: the body gives the new second column |
//!
//! A body may hold `let` lines, `if/else`, the functions of `stillrise_units::math`, the sums of
//! [`mod@crate::page`] and its own helpers, and nothing else, because the printed equation is read
//! off it; a test evaluates that equation and compares it with the function bit for bit.

/// Defines a closed set of words that may be an argument.
#[macro_export]
macro_rules! choice {
    ($(#[$doc:meta])* $ty:ident { $($(#[doc = $vdoc:literal])+ $variant:ident $word:literal),+ $(,)? }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
        pub enum $ty { $($(#[doc = $vdoc])+ $variant),+ }
        impl $ty {
            /// All of them, in order.
            pub const ALL: &'static [$ty] = &[$($ty::$variant),+];
            /// The word in files and on the terminal.
            #[must_use]
            pub fn word(self) -> &'static str {
                match self { $($ty::$variant => $word),+ }
            }
            /// The word's meaning.
            #[must_use]
            pub fn meaning(self) -> &'static str {
                match self { $($ty::$variant => concat!($($vdoc),+).trim_ascii()),+ }
            }
            /// From the word.
            #[must_use]
            pub fn from_word(word: &str) -> Option<Self> {
                match word { $($word => Some($ty::$variant),)+ _ => None }
            }
        }
        impl $crate::page::Argument for $ty {
            const KIND: $crate::page::Kind =
                $crate::page::Kind::Choice(&[$(($word, concat!($($vdoc),+).trim_ascii())),+]);
            fn arg(&self) -> $crate::page::Arg { $crate::page::Arg::Choice(self.word()) }
            fn from_arg(arg: &$crate::page::Arg) -> Option<Self> {
                match arg { $crate::page::Arg::Choice(word) => Self::from_word(word), _ => None }
            }
            fn key(&self, key: &mut $crate::memo::Key) { key.push(*self as u64) }
        }
    };
}

/// Defines a group of arguments that go together under one name: the droplets, the water, one stage. Each field is
/// declared as an argument of a page is.
#[macro_export]
macro_rules! group {
    (
        $(#[doc = $doc:literal])+
        $group:ident $word:literal {$(
            $arg:ident : $ty:ty = $math:literal $meaning:literal
                $([$us:ident, $si:ident : $lo:literal .. $hi:literal in $dlo:literal .. $dhi:literal])?
                $({$us1:ident, $si1:ident; $us2:ident, $si2:ident})?
        );+ $(;)?}
    ) => {
        $(#[doc = $doc])+
        #[derive(Debug, Clone, PartialEq)]
        pub struct $group {$(
            #[doc = $meaning]
            pub $arg: $ty,
        )+}

        impl $group {
            /// Its word and its fields, as files, `work` and print know them.
            pub const GROUP: &'static $crate::page::Group = &$crate::page::Group {
                word: $word,
                meaning: concat!($($doc, "\n"),+),
                fields: &[$($crate::page::Symbol {
                    name: stringify!($arg), math: $math, meaning: $meaning,
                    kind: <$ty as $crate::page::Argument>::KIND,
                    units: $crate::first!($((&$crate::units::catalog::$us, &$crate::units::catalog::$si))? $((&$crate::units::catalog::$us1, &$crate::units::catalog::$si1))?),
                    second: $crate::first!($((&$crate::units::catalog::$us2, &$crate::units::catalog::$si2))?),
                    range: $crate::first!($(($lo as f64, $hi as f64))?),
                    domain: $crate::first!($(($dlo as f64, $dhi as f64))?),
                }),+],
            };
        }

        impl $crate::page::Argument for $group {
            const KIND: $crate::page::Kind = $crate::page::Kind::Group(Self::GROUP);
            fn arg(&self) -> $crate::page::Arg {
                $crate::page::Arg::Group(Self::GROUP, vec![$($crate::page::Argument::arg(&self.$arg)),+])
            }
            fn from_arg(arg: &$crate::page::Arg) -> Option<Self> {
                let $crate::page::Arg::Group(group, fields) = arg else { return None };
                if *group != Self::GROUP {
                    return None;
                }
                let mut fields = fields.iter();
                Some(Self { $($arg: <$ty as $crate::page::Argument>::from_arg(fields.next()?)?),+ })
            }
            #[allow(unused_variables)]
            #[inline]
            fn within(&self, page: &'static str) -> Result<(), $crate::page::Outside> {
                #[allow(unused_imports)]
                use $crate::page::{Argument as _, guard};
                $($(guard(page, stringify!($arg), self.$arg.number(), &$crate::units::catalog::$si, $dlo as f64, $dhi as f64)?;)?)+
                Ok(())
            }
            #[inline]
            fn key(&self, key: &mut $crate::memo::Key) {
                $($crate::page::Argument::key(&self.$arg, key);)+
            }
        }
    };
}

/// Defines one formula page. See the module's head for the order.
#[macro_export]
macro_rules! formula {
    (
        $(#[doc = $doc:literal])+
        $id:literal $title:literal
        fn $name:ident($(
            $arg:ident : $ty:ty = $math:literal $meaning:literal
                $([$us:ident, $si:ident : $lo:literal .. $hi:literal in $dlo:literal .. $dhi:literal])?
                $({$us1:ident, $si1:ident; $us2:ident, $si2:ident})?
        );+ $(;)?)
        $(with $group:ident $gword:literal ($(
            $garg:ident : $gty:ty = $gmath:literal $gmeaning:literal
                $([$gus:ident, $gsi:ident : $glo:literal .. $ghi:literal in $gdlo:literal .. $gdhi:literal])?
                $({$gus1:ident, $gsi1:ident; $gus2:ident, $gsi2:ident})?
        );+ $(;)?))?
        -> $out:ty = $omath:literal $omeaning:literal
            $([$ous:ident, $osi:ident])? $({$ous1:ident, $osi1:ident; $ous2:ident, $osi2:ident})?;
        $form:ident $([$($spec:tt)*])? { $($body:tt)* } $(by $by:block)?
        $(constants [$($cname:ident $cmath:literal),* $(,)?])?
        $(helpers [$($hname:ident($($hty:ty),*) $hmath:literal $hmeaning:literal);* $(;)?])?
        sources [$($source:ident),+ $(,)?]
        checks [$($given:literal => $expect:literal $(within $tol:literal $why:literal)?, $evidence:expr;)*]
    ) => {
        $(#[doc = $doc])+
        ///
        /// # Errors
        /// [`Outside`](crate::page::Outside) when an argument lies outside the domain stated in
        /// `PAGE`, or the formula has no finite answer.
        #[allow(clippy::too_many_arguments, clippy::needless_pass_by_value, unused_parens)]
        pub fn $name($($arg: $ty,)+ $($($garg: $gty,)+)?) -> Result<$out, $crate::page::Outside> {
            #[allow(unused_imports)]
            use $crate::page::{Argument as _, guard};
            $($(guard($id, stringify!($arg), $arg.number(), &$crate::units::catalog::$si, $dlo as f64, $dhi as f64)?;)?)+
            $($($(guard($id, stringify!($garg), $garg.number(), &$crate::units::catalog::$gsi, $gdlo as f64, $gdhi as f64)?;)?)+)?
            $($crate::page::Argument::within(&$arg, $id)?;)+
            $crate::formula_body!($form [$($($spec)*)?] $id, $out, { $($body)* } $($by)?)
        }

        /// The page of this formula.
        pub static PAGE: $crate::page::Page = $crate::page::Page {
            id: $id,
            title: $title,
            note: concat!($($doc, "\n"),+),
            file: file!(),
            body: $crate::formula_text!($form { $($body)* }),
            works_in: $crate::formula_units!($form [$($($spec)*)?]),
            constants: &[$($((stringify!($cname), $cmath, $cname)),*)?],
            helpers: &[$($($crate::page::Helper {
                name: stringify!($hname), math: $hmath, meaning: $hmeaning,
                apply: |args| {
                    #[allow(unused_mut, unused_variables)]
                    let mut args = args.iter();
                    Some($hname($(<$hty as $crate::page::Argument>::from_arg(args.next()?)?),*))
                },
            }),*)?],
            args: &[$($crate::page::Symbol {
                name: stringify!($arg), math: $math, meaning: $meaning,
                kind: <$ty as $crate::page::Argument>::KIND,
                units: $crate::first!($((&$crate::units::catalog::$us, &$crate::units::catalog::$si))? $((&$crate::units::catalog::$us1, &$crate::units::catalog::$si1))?),
                second: $crate::first!($((&$crate::units::catalog::$us2, &$crate::units::catalog::$si2))?),
                range: $crate::first!($(($lo as f64, $hi as f64))?),
                domain: $crate::first!($(($dlo as f64, $dhi as f64))?),
            },)+ $($($crate::page::Symbol {
                name: stringify!($garg), math: $gmath, meaning: $gmeaning,
                kind: <$gty as $crate::page::Argument>::KIND,
                units: $crate::first!($((&$crate::units::catalog::$gus, &$crate::units::catalog::$gsi))? $((&$crate::units::catalog::$gus1, &$crate::units::catalog::$gsi1))?),
                second: $crate::first!($((&$crate::units::catalog::$gus2, &$crate::units::catalog::$gsi2))?),
                range: $crate::first!($(($glo as f64, $ghi as f64))?),
                domain: $crate::first!($(($gdlo as f64, $gdhi as f64))?),
            },)+)?],
            out: $crate::page::Symbol {
                name: "result", math: $omath, meaning: $omeaning,
                kind: <$out as $crate::page::Argument>::KIND,
                units: $crate::first!($((&$crate::units::catalog::$ous, &$crate::units::catalog::$osi))? $((&$crate::units::catalog::$ous1, &$crate::units::catalog::$osi1))?),
                second: $crate::first!($((&$crate::units::catalog::$ous2, &$crate::units::catalog::$osi2))?),
                range: None, domain: None,
            },
            sources: &[$(&$source),+],
            checks: &[$($crate::page::Check {
                given: $given, expect: $expect,
                within: $crate::first!($(($tol, $why))?), evidence: $evidence,
            }),*],
            call: |args| {
                let mut args = args.iter();
                $(let $arg = $crate::page::take($id, stringify!($arg), args.next())?;)+
                $($(let $garg = $crate::page::take($id, stringify!($garg), args.next())?;)+)?
                $name($($arg,)+ $($($garg,)+)?).map(|out| $crate::page::Argument::arg(&out))
            },
            holds: $crate::formula_holds!($form [$($($spec)*)?] ($($arg: $ty,)+ $($($garg: $gty,)+)?) { $($body)* }),
        };

        $($crate::group! {
            #[doc = $title]
            $group $gword {$(
                $garg: $gty = $gmath $gmeaning
                    $([$gus, $gsi : $glo .. $ghi in $gdlo .. $gdhi])?
                    $({$gus1, $gsi1; $gus2, $gsi2})?
            );+}
        })?
    };
}

/// The first of at most one item, as an `Option`.
#[doc(hidden)]
#[macro_export]
macro_rules! first {
    () => {
        None
    };
    ($item:expr) => {
        Some($item)
    };
}

/// The working part of the generated function.
#[doc(hidden)]
#[macro_export]
macro_rules! formula_body {
    (typed [] $id:literal, $out:ty, { $($body:tt)* }) => {{
        let out: $out = { $($body)* };
        $crate::page::finish($id, out)
    }};
    (reduced [$($rarg:ident $runit:ident),* => $ounit:ident] $id:literal, $out:ty, { $($body:tt)* }) => {{
        use $crate::units::Typed as _;
        $(let $rarg: f64 = $rarg.in_unit(&$crate::units::catalog::$runit);)*
        let out: f64 = { $($body)* };
        $crate::page::finish($id, <$out>::of(out, &$crate::units::catalog::$ounit))
    }};
    (solves [$($rarg:ident $runit:ident),* => $solved:ident $ounit:ident] $id:literal, $out:ty, { $($body:tt)* } $by:block) => {{
        use $crate::units::Typed as _;
        $(let $rarg: f64 = $rarg.in_unit(&$crate::units::catalog::$runit);)*
        let out: Option<f64> = $by;
        match out {
            Some(out) => $crate::page::finish($id, <$out>::of(out, &$crate::units::catalog::$ounit)),
            None => Err($crate::page::Outside {
                page: $id, argument: "result",
                reason: "the relation has no solution here".to_owned(),
            }),
        }
    }};
    (maps [$series:ident($x:ident $xunit:ident, $y:ident $yunit:ident) $(, $rarg:ident $runit:ident)* => $ounit:ident] $id:literal, $out:ty, { $($body:tt)* }) => {{
        #[allow(unused_imports)]
        use $crate::units::Typed as _;
        $(let $rarg: f64 = $rarg.in_unit(&$crate::units::catalog::$runit);)*
        let mut out = Vec::with_capacity($series.0.len());
        for (x, y) in &$series.0 {
            #[allow(unused_variables)]
            let ($x, $y) = ($crate::units::catalog::$xunit.from_si(*x), $crate::units::catalog::$yunit.from_si(*y));
            let value: f64 = { $($body)* };
            out.push((*x, $crate::units::catalog::$ounit.to_si(value)));
        }
        $crate::page::finish($id, $crate::page::Series(out))
    }};
}

/// The body as text.
#[doc(hidden)]
#[macro_export]
macro_rules! formula_text {
    (typed { $($body:tt)* }) => { $crate::page::Body::Typed(stringify!($($body)*)) };
    (reduced { $($body:tt)* }) => { $crate::page::Body::Reduced(stringify!($($body)*)) };
    (maps { $($body:tt)* }) => { $crate::page::Body::Maps(stringify!($($body)*)) };
    (solves { $left:expr => $right:expr }) => {
        $crate::page::Body::Solves(stringify!($left), stringify!($right))
    };
}

/// The working units, by name.
#[doc(hidden)]
#[macro_export]
macro_rules! formula_units {
    (typed []) => { &[] };
    (reduced [$($rarg:ident $runit:ident),* => $ounit:ident]) => {
        &[$((stringify!($rarg), &$crate::units::catalog::$runit),)* ("result", &$crate::units::catalog::$ounit)]
    };
    (solves [$($rarg:ident $runit:ident),* => $solved:ident $ounit:ident]) => {
        &[$((stringify!($rarg), &$crate::units::catalog::$runit),)* (stringify!($solved), &$crate::units::catalog::$ounit)]
    };
    (maps [$series:ident($x:ident $xunit:ident, $y:ident $yunit:ident) $(, $rarg:ident $runit:ident)* => $ounit:ident]) => {
        &[(stringify!($x), &$crate::units::catalog::$xunit), (stringify!($y), &$crate::units::catalog::$yunit),
          $((stringify!($rarg), &$crate::units::catalog::$runit),)* ("result", &$crate::units::catalog::$ounit)]
    };
}

/// Both sides of a solved relation at a result.
#[doc(hidden)]
#[macro_export]
macro_rules! formula_holds {
    (solves [$($rarg:ident $runit:ident),* => $solved:ident $ounit:ident] ($($arg:ident : $ty:ty),+ $(,)?) { $left:expr => $right:expr }) => {
        Some(|args, result| {
            #[allow(unused_imports)]
            use $crate::units::Typed as _;
            let mut args = args.iter();
            #[allow(unused_variables)]
            let ($($arg,)+) = ($(args.next().and_then(<$ty as $crate::page::Argument>::from_arg)?,)+);
            $(let $rarg: f64 = $rarg.in_unit(&$crate::units::catalog::$runit);)*
            let $solved: f64 = $crate::units::catalog::$ounit.from_si(result);
            let (left, right): (f64, f64) = ($left, $right);
            Some((left, right))
        })
    };
    ($form:ident $($rest:tt)*) => { None };
}
