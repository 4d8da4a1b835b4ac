//! Sources on pipes, weirs and losses.

sources! {
    COLEBROOK "Colebrook and White, Turbulent flow in pipes" "1939" SecondHand;
    R_HYDRAULICS "Vignette of the R package hydraulics, pipe example" "" Read;
}
