//! What needs no publication, and what several areas share.

sources! {
    COMMON_PRACTICE "Common practice of the trade" "" Practice;
    DEFINITION "Definition or geometry; needs no authority" "" Read;
    JUDGEMENT "Engineering judgement of this handbook" "" Memory;
}
