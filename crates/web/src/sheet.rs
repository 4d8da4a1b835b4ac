//! One enquiry that lies open: its text as it stands on the disk, what it comes to, and what was done to it.

use crate::answer::Refusal;
use crate::customer::Customer;
use crate::desk::Desk;
use crate::outcome::{Outcome, Read};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError, RwLock};
use std::thread;
use stillrise_design::enquiry::blocks::{Head, OilBlock, Status};
use stillrise_design::enquiry::keys::Block;
use stillrise_desk::Trouble;
use stillrise_desk::folder::{Place, Stamp};
use stillrise_desk::frozen::{Prepared, prepared};
use stillrise_desk::save::Unsaved;
use stillrise_edit::{Action, History, apply, headings};
use stillrise_units::Fault;

/// A sheet as it stands at a moment.
pub struct State {
    /// Counts up with every change.
    pub version: u64,
    /// The text of the enquiry.
    pub text: String,
    /// What it comes to.
    pub outcome: Arc<Outcome>,
    /// The customer's text beside it.
    pub mail: Option<Arc<Customer>>,
    /// What could be undone, in words, and what could be done again.
    pub back: Option<String>,
    /// What could be done again.
    pub again: Option<String>,
    /// What the reader should be told once, as that another program changed the file.
    pub note: Option<String>,
    stamp: Stamp,
}

/// An open enquiry.
pub struct Sheet {
    /// Where it lies.
    pub place: Place,
    now: RwLock<Arc<State>>,
    /// What was done; whoever changes the sheet holds it.
    done: Mutex<History>,
}

/// What is to become of a text.
pub enum Change {
    /// A change of single keys, which goes with whatever else was changed meanwhile.
    Keys(Vec<Action>),
    /// A whole new text, meant for a version.
    Text {
        /// The text.
        text: String,
        /// The version that it was written over.
        over: u64,
    },
    /// One step back.
    Undo,
    /// One step forth.
    Redo,
}

impl State {
    /// Whether the revision is issued, and so locked.
    #[must_use]
    pub fn is_locked(&self) -> bool {
        let head = self.outcome.enquiry.as_ref().map(|enquiry| &enquiry.head);
        head.is_some_and(is_issued)
    }
}

/// Whether a text was saved, what it comes to, and what is kept of it where it was issued.
type Worked = (Result<Stamp, Unsaved>, Outcome, Option<Prepared>);

/// Whether documents go out as issued.
fn is_issued(head: &Head) -> bool {
    matches!(head.status.0, Some(Status::Issued | Status::AsBuilt))
}

/// Keeps the set of a revision that was just issued; what to tell of it.
fn kept(issue: Prepared) -> String {
    match issue.keep() {
        Ok((folder, _)) => {
            let name = folder.file_name().map_or_else(String::new, |name| name.to_string_lossy().into_owned());
            format!(
                "Issued and locked. All inputs and results are kept beside the enquiry, in {name}; Units tells what has changed since."
            )
        }
        Err(trouble) => {
            let why = match trouble {
                Trouble::Refused(faults) => faults.iter().map(ToString::to_string).collect::<Vec<_>>().join("; "),
                Trouble::Machine(reason) => reason,
            };
            format!("Issued and locked, but what was issued could not be kept beside the enquiry: {why}.")
        }
    }
}

impl Sheet {
    /// Opens an enquiry.
    ///
    /// # Errors
    /// [`Refusal`] when its file cannot be read.
    pub fn open(desk: &Desk, place: Place) -> Result<Self, Refusal> {
        let (text, stamp) = desk.folder.text(&place)?;
        let state = State {
            version: 1,
            outcome: Arc::new(Outcome::of(desk, &place, &text)),
            mail: customer(desk.folder.mail(&place)),
            back: None,
            again: None,
            note: None,
            stamp,
            text: text.clone(),
        };
        Ok(Self { place, now: RwLock::new(Arc::new(state)), done: Mutex::new(History::new(text)) })
    }

    /// The sheet as it stands.
    #[must_use]
    pub fn now(&self) -> Arc<State> {
        Arc::clone(&self.now.read().unwrap_or_else(PoisonError::into_inner))
    }

    fn turn(&self) -> MutexGuard<'_, History> {
        self.done.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn stand(&self, state: State) -> Arc<State> {
        let state = Arc::new(state);
        *self.now.write().unwrap_or_else(PoisonError::into_inner) = Arc::clone(&state);
        state
    }

    /// Reads the file again, if another hand changed it.
    ///
    /// # Errors
    /// [`Refusal`] when it cannot be read.
    pub fn look(&self, desk: &Desk) -> Result<(), Refusal> {
        let (_, stamp) = desk.folder.text(&self.place)?;
        if self.now().stamp != stamp {
            let mut done = self.turn();
            // A change of ours may have been saved meanwhile: what was read before it is old, and not another hand's.
            let (text, stamp) = desk.folder.text(&self.place)?;
            if self.now().stamp != stamp {
                self.adopt(desk, &mut done, text, stamp);
            }
        }
        if !desk.folder.settings_stand(&self.place, &self.now().outcome.held) {
            let done = self.turn();
            let (was, held) = (self.now(), desk.folder.settings(&self.place));
            let before = &was.outcome.held;
            if held.inputs != before.inputs || held.faults != before.faults || held.file != before.file {
                self.under_others(desk, &done);
            }
        }
        let mail = desk.folder.mail(&self.place);
        if mail.as_deref() != self.now().mail.as_ref().map(|mail| mail.text.as_str()) {
            let done = self.turn();
            self.stand_with(&done, customer(desk.folder.mail(&self.place)));
        }
        Ok(())
    }

    /// Works the same text under other settings of the company.
    fn under_others(&self, desk: &Desk, done: &History) -> Arc<State> {
        let was = self.now();
        self.stand(State {
            version: was.version + 1,
            text: was.text.clone(),
            outcome: Arc::new(Outcome::of(desk, &self.place, &was.text)),
            mail: was.mail.clone(),
            back: back(done),
            again: again(done),
            note: Some(
                "The company's settings were changed meanwhile; the sheet shows what follows from them now.".to_owned(),
            ),
            stamp: was.stamp.clone(),
        })
    }

    /// Goes on with a text that another program wrote; what stood before can be had back by undoing.
    fn adopt(&self, desk: &Desk, done: &mut History, text: String, stamp: Stamp) -> Arc<State> {
        let was = self.now();
        done.push(text.clone(), "changed by another program");
        let outcome = Arc::new(Outcome::of(desk, &self.place, &text));
        let note = "The file was changed by another program meanwhile; the sheet shows what it holds now. Undo brings back what \
                    stood here before.";
        self.stand(State {
            version: was.version + 1,
            outcome,
            mail: customer(desk.folder.mail(&self.place)),
            back: back(done),
            again: again(done),
            note: Some(note.to_owned()),
            text,
            stamp,
        })
    }

    /// Changes the enquiry and saves it: what is answered stands on the disk.
    ///
    /// # Errors
    /// [`Refusal`]; then the file is as it was.
    pub fn change(&self, desk: &Desk, change: &Change) -> Result<Arc<State>, Refusal> {
        let mut done = self.turn();
        // What another program writes between reading and saving is read again and again changed; who writes without end
        // is not waited for.
        for _ in 0..3 {
            let was = self.now();
            let (text, says) = self.changed(&was, &done, change)?;
            if text == was.text {
                return Ok(was);
            }
            self.locked(&was, change)?;
            let outcome = self.worked(desk, &was, &text, change)?;
            match outcome {
                (Ok(stamp), outcome, issue) => {
                    match change {
                        Change::Undo => drop(done.undo().map(|step| step.what.len())),
                        Change::Redo => drop(done.redo().map(|step| step.what.len())),
                        Change::Keys(_) | Change::Text { .. } => done.push(text.clone(), says),
                    }
                    let mut state = State {
                        version: was.version + 1,
                        outcome: Arc::new(outcome),
                        mail: was.mail.clone(),
                        back: back(&done),
                        again: again(&done),
                        note: None,
                        text,
                        stamp,
                    };
                    state.note = issue.map(kept);
                    return Ok(self.stand(state));
                }
                (Err(Unsaved::Changed(bytes)), ..) => {
                    let stamp = Stamp::of(&bytes);
                    let Ok(text) = String::from_utf8(bytes) else {
                        return Err(Refusal::Conflict(
                            "Nothing was saved: the file holds no text any more.".to_owned(),
                        ));
                    };
                    self.adopt(desk, &mut done, text, stamp);
                }
                (Err(other), ..) => return Err(other.into()),
            }
        }
        Err(Refusal::Conflict("Nothing was saved: another program keeps changing the file.".to_owned()))
    }

    /// The text that a change makes, and what it does in words.
    fn changed(&self, was: &State, done: &History, change: &Change) -> Result<(String, String), Refusal> {
        match change {
            Change::Keys(actions) => {
                let mut text = was.text.clone();
                for action in actions {
                    if let Some(first) = stood_in(&text, action) {
                        text = apply(&text, &first)?;
                    }
                    text = apply(&text, action)?;
                }
                let says: Vec<String> = actions.iter().map(Action::says).collect();
                Ok((text, says.join("; ")))
            }
            Change::Text { over, .. } if *over != was.version => Err(Refusal::Conflict(
                "Nothing was saved: the enquiry was changed meanwhile, here or by another program. Your text stays in its field; \
                 take over what you need into the text as it stands now."
                    .to_owned(),
            )),
            Change::Text { text, .. } => Ok((text.clone(), "text edited".to_owned())),
            Change::Undo => Ok((step(done, done.at().checked_sub(1)).unwrap_or(&was.text).to_owned(), String::new())),
            Change::Redo => Ok((step(done, done.at().checked_add(1)).unwrap_or(&was.text).to_owned(), String::new())),
        }
    }

    /// Refuses what would change an issued revision, other than its own state.
    fn locked(&self, was: &State, change: &Change) -> Result<(), Refusal> {
        let opens = |action: &Action| matches!(action, Action::Set { path, .. } if matches!(path.to_string().as_str(), "enquiry.status" | "enquiry.revision"));
        let opened =
            matches!(change, Change::Keys(actions) if actions.iter().all(opens)) || matches!(change, Change::Undo);
        if was.is_locked() && !opened {
            return Err(Refusal::Conflict(
                "This revision is issued and locked. Start the next revision, then change it.".to_owned(),
            ));
        }
        Ok(())
    }

    /// What a text comes to, and whether it was saved. A text with faults that the old one had not is refused unsaved.
    fn worked(&self, desk: &Desk, was: &State, text: &str, change: &Change) -> Result<Worked, Refusal> {
        // What stood here before may always come back.
        let back = matches!(change, Change::Undo | Change::Redo);
        let read = Read::text(desk, &self.place, text);
        if let Err(faults) = &read.enquiry {
            let fresh: Vec<Fault> =
                faults.iter().filter(|fault| !back && !was.outcome.faults.contains(fault)).cloned().collect();
            if !fresh.is_empty() {
                return Err(Refusal::Faults(fresh));
            }
        }
        let issues = read.enquiry.as_ref().is_ok_and(|enquiry| {
            let revision = |head: &Head| head.revision.0.clone().unwrap_or_default();
            let before = was.outcome.enquiry.as_ref().map(|enquiry| revision(&enquiry.head));
            is_issued(&enquiry.head) && !(was.is_locked() && before == Some(revision(&enquiry.head)))
        });
        if issues {
            // What bars the issue must be known before anything is saved.
            let outcome = Outcome::read(desk, read);
            let issue = match &outcome.settled {
                Some(settled) => Some(prepared(&self.place.file, settled, &outcome.taken)?),
                None => None,
            };
            return Ok((desk.folder.save(&self.place, text, &was.stamp), outcome, issue));
        }
        // The disk and the calculation take their time side by side.
        thread::scope(|scope| {
            let saved = scope.spawn(|| desk.folder.save(&self.place, text, &was.stamp));
            let outcome = Outcome::read(desk, read);
            let saved = saved.join().unwrap_or_else(|_| Err(Unsaved::Disk("the save failed".to_owned())));
            Ok((saved, outcome, None))
        })
    }

    /// The same with another text of the customer beside it.
    fn stand_with(&self, done: &History, mail: Option<Arc<Customer>>) -> Arc<State> {
        let was = self.now();
        self.stand(State {
            version: was.version + 1,
            text: was.text.clone(),
            outcome: Arc::clone(&was.outcome),
            mail,
            back: back(done),
            again: again(done),
            note: None,
            stamp: was.stamp.clone(),
        })
    }

    /// Keeps the customer's text beside the enquiry.
    ///
    /// # Errors
    /// [`Refusal`] when the disk does not take it.
    pub fn keep_mail(&self, desk: &Desk, mail: &str) -> Result<Arc<State>, Refusal> {
        let done = self.turn();
        desk.folder.save_mail(&self.place, mail)?;
        Ok(self.stand_with(&done, customer(Some(mail.to_owned()))))
    }
}

fn customer(text: Option<String>) -> Option<Arc<Customer>> {
    text.map(|text| Arc::new(Customer::new(text)))
}

/// The block that an answer asks for first: an oil that nobody named stands in by its kind, and has no block until something is
/// said of it.
fn stood_in(text: &str, action: &Action) -> Option<Action> {
    let (Action::Set { path, .. } | Action::Claim { path, .. }) = action else { return None };
    let heading = path.heading();
    let name = heading.name().map(str::to_owned).filter(|_| core::ptr::eq(heading.block(), OilBlock::spec()))?;
    let stands = headings(text).ok()?.iter().any(|known| known == heading);
    let keys = ["name", "kind"].map(|key| (key.to_owned(), name.clone())).to_vec();
    (!stands).then(|| Action::AddBlock { block: heading.block().name.to_owned(), keys })
}

/// The text at a place of the history.
fn step(done: &History, at: Option<usize>) -> Option<&str> {
    done.steps().get(at?).map(|step| step.text.as_str())
}

/// What undoing would take back, in words.
fn back(done: &History) -> Option<String> {
    done.now().filter(|_| done.can_undo()).map(|step| step.what.clone())
}

/// What would be done again, in words.
fn again(done: &History) -> Option<String> {
    done.steps().get(done.at() + 1).map(|step| step.what.clone())
}

/// Does work that takes its time apart from what waits for requests.
///
/// # Errors
/// As the work; and where it failed, that.
pub async fn apart<T: Send + 'static>(
    work: impl FnOnce() -> Result<T, Refusal> + Send + 'static,
) -> Result<T, Refusal> {
    match tokio::task::spawn_blocking(work).await {
        Ok(done) => done,
        Err(_) => Err(Refusal::Machine(
            "The program failed at this request; what stood before stands, and all else goes on. Please tell us what you did."
                .to_owned(),
        )),
    }
}
