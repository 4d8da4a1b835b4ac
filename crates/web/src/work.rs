//! Packages under way: made in the background, with what is being done, and an end at any step.

use crate::answer::Refusal;
use crate::desk::Desk;
use crate::outcome::{Outcome, Read};
use std::collections::BTreeMap;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread;
use stillrise_desk::folder::Place;
use stillrise_documents::Edition;
use stillrise_documents::package::{STEPS, package_step_by_step};
use stillrise_search::risk::SAMPLES;
use stillrise_search::settle;

/// Name and bytes of each document.
pub type Files = Vec<(String, Vec<u8>)>;

/// Packages that are kept; of more, the oldest that is done goes first.
const KEPT: usize = 12;
/// Packages that may be under way at a time.
const AT_ONCE: usize = 2;
/// What is done before the documents are made.
const BEFORE: [&str; 2] = ["other trains that would do", "study of what is uncertain"];

/// How a package stands.
#[derive(Debug, Clone)]
pub enum Stand {
    /// It is being made: what of it now.
    Making(&'static str),
    /// It is there.
    Done(Arc<Files>),
    /// It was stopped.
    Stopped,
    /// It could not be made.
    Failed(String),
}

/// One package.
#[derive(Debug)]
pub struct Package {
    /// The enquiry.
    pub sheet: String,
    /// The version of it that the package is of.
    pub version: u64,
    /// For whom.
    pub edition: Edition,
    stand: Mutex<Stand>,
    done: AtomicUsize,
    stop: AtomicBool,
}

impl Package {
    /// How it stands.
    #[must_use]
    pub fn stand(&self) -> Stand {
        lock(&self.stand).clone()
    }
    /// Steps done, and steps in all.
    #[must_use]
    pub fn steps(&self) -> (usize, usize) {
        (self.done.load(Ordering::Relaxed), BEFORE.len() + STEPS.len())
    }
    /// Ends it at its next step.
    pub fn stop(&self) {
        self.stop.store(true, Ordering::Relaxed);
    }
    /// Takes up a step, unless it is to end.
    fn goes_on(&self, step: &'static str) -> bool {
        if self.stop.load(Ordering::Relaxed) {
            return false;
        }
        let known = BEFORE.iter().chain(&STEPS).position(|own| *own == step).unwrap_or_default();
        self.done.store(known, Ordering::Relaxed);
        *lock(&self.stand) = Stand::Making(step);
        true
    }
}

/// All packages of this start.
#[derive(Debug, Default)]
pub struct Packages {
    all: Mutex<(u64, BTreeMap<u64, Arc<Package>>)>,
}

fn lock<T>(of: &Mutex<T>) -> MutexGuard<'_, T> {
    of.lock().unwrap_or_else(PoisonError::into_inner)
}

impl Packages {
    /// One of them.
    ///
    /// # Errors
    /// [`Refusal`] when there is none of the number.
    pub fn find(&self, number: u64) -> Result<Arc<Package>, Refusal> {
        lock(&self.all)
            .1
            .get(&number)
            .cloned()
            .ok_or_else(|| Refusal::missing("This package is not kept any more; make it again."))
    }

    /// Those of an enquiry that are kept, with their numbers.
    #[must_use]
    pub fn of(&self, sheet: &str) -> Vec<(u64, Arc<Package>)> {
        let all = lock(&self.all);
        all.1
            .iter()
            .filter(|(_, package)| package.sheet == sheet)
            .map(|(number, package)| (*number, Arc::clone(package)))
            .collect()
    }

    /// Begins one, and answers its number.
    ///
    /// # Errors
    /// [`Refusal`] when too many are under way.
    pub fn begin(
        &self,
        desk: &Arc<Desk>,
        place: Place,
        version: u64,
        text: String,
        edition: Edition,
    ) -> Result<u64, Refusal> {
        let package = Arc::new(Package {
            sheet: place.name.clone(),
            version,
            edition,
            stand: Mutex::new(Stand::Making(BEFORE[0])),
            done: AtomicUsize::new(0),
            stop: AtomicBool::new(false),
        });
        let number = {
            let mut all = lock(&self.all);
            let busy = all.1.values().filter(|package| matches!(package.stand(), Stand::Making(_))).count();
            if busy >= AT_ONCE {
                return Err(Refusal::Conflict(
                    "Other packages are being made; stop one of them, or wait for it.".to_owned(),
                ));
            }
            all.0 += 1;
            let number = all.0;
            all.1.insert(number, Arc::clone(&package));
            while all.1.len() > KEPT {
                let Some(oldest) = all.1.iter().find(|(_, p)| !matches!(p.stand(), Stand::Making(_))).map(|(k, _)| *k)
                else {
                    break;
                };
                all.1.remove(&oldest);
            }
            number
        };
        let (desk, shared) = (Arc::clone(desk), Arc::clone(&package));
        let begun =
            thread::Builder::new().name("package".to_owned()).stack_size(crate::server::STACK).spawn(move || {
                let made =
                    std::panic::catch_unwind(core::panic::AssertUnwindSafe(|| make(&desk, &place, &text, &shared)));
                *lock(&shared.stand) = match made {
                    Ok(Ok(Some(files))) => Stand::Done(Arc::new(files)),
                    Ok(Ok(None)) => Stand::Stopped,
                    Ok(Err(reason)) => Stand::Failed(reason),
                    Err(_) => {
                        Stand::Failed("the program failed at it; please tell us what the enquiry holds".to_owned())
                    }
                };
            });
        begun.map_err(|error| Refusal::Machine(format!("no thread can be had: {error}")))?;
        Ok(number)
    }
}

/// Makes all documents; `None` where it was stopped.
fn make(desk: &Desk, place: &Place, text: &str, package: &Package) -> Result<Option<Files>, String> {
    let refused = |faults: Vec<stillrise_units::Fault>| {
        faults.iter().map(|f| format!("{}: {}", f.place, f.reason)).collect::<Vec<_>>().join("; ")
    };
    let Read { enquiry, taken, .. } = Read::text(desk, place, text);
    let enquiry = enquiry.map_err(refused)?;
    Outcome::fits(&enquiry, &desk.demo).map_err(|fault| refused(vec![fault]))?;
    let mut settled = settle(&enquiry, &desk.demo);
    if !package.goes_on(BEFORE[0]) {
        return Ok(None);
    }
    settled.work_alternatives(&desk.demo);
    if !package.goes_on(BEFORE[1]) {
        return Ok(None);
    }
    settled.study(SAMPLES);
    if settled.job.enquiry.is_observed()
        && let Err(stop) = settled.diagnose()
    {
        settled.job.design.stops.push(stop);
    }
    let inputs = taken.inputs();
    let made = package_step_by_step(&settled, package.edition, &inputs, &|step| package.goes_on(step));
    made.map_err(|fault| format!("the {} could not be made: {}", fault.document, fault.reason))
}
