//! Sources on laboratory results and their statistics.

sources! {
    EPA_1664B "US EPA, Method 1664, Revision B: n-Hexane Extractable Material (HEM; Oil and Grease) and Silica Gel Treated n-Hexane Extractable Material (SGT-HEM; Non-polar Material), EPA-821-R-10-001" "2010" SecondHand;
    HELSEL "Helsel, Statistics for Censored Environmental Data Using Minitab and R, 2nd ed., Wiley" "2012" Memory;
    COHEN "Cohen, Simplified estimators for the normal distribution when samples are singly censored or truncated, Technometrics 1:217-237" "1959" Memory;
    UNIFIED_GUIDANCE "US EPA, Statistical Analysis of Groundwater Monitoring Data at RCRA Facilities, Unified Guidance, EPA 530/R-09-007, example 15-1: manganese at five wells" "2009" Memory;
    AITCHISON_BROWN "Aitchison and Brown, The Lognormal Distribution, Cambridge University Press" "1957" Memory;
    STUDENT "Student, The probable error of a mean, Biometrika 6:1-25; textbook statistics" "1908" Memory;
    ABRAMOWITZ_STEGUN "Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4" "1964" Memory;
}
