//! Houses worked out on several cores and handed on in the order in which they came.
//!
//! A reader cuts the houses into chunks, workers take them, and the chunks are put in order again. There are
//! no more chunks on the way than tickets; a ticket comes back only once its chunk is handed on, so that a
//! reader downstream that is slow stops the reader upstream, and memory stays as it is.

use std::collections::BTreeMap;
use std::sync::mpsc::{Receiver, SyncSender, sync_channel};
use std::sync::{Arc, Mutex};
use std::thread;

use fairfoot::batch::{Outcome, Terms, worked_out};

use crate::cli::batch::houses::{List, Waiting};
use crate::cli::batch::{Format, output};

/// The most houses in a chunk.
const MOST_HOUSES: usize = 64;
/// A chunk that holds more bytes than this is not filled further.
const MOST_BYTES: usize = 1 << 20;

/// Houses that were worked out, as they are to be written.
pub(super) struct Chunk {
    number: u64,
    pub(super) bytes: Vec<u8>,
    pub(super) count: u64,
    pub(super) faulty: bool,
    /// The houses themselves, where a summary wants them.
    pub(super) houses: Vec<Outcome>,
}

/// Chunks in the order of their houses.
pub(super) struct Chunks {
    done: Receiver<Chunk>,
    tickets: Receiver<()>,
    early: BTreeMap<u64, Chunk>,
    next: u64,
}

type Task = (u64, Vec<Waiting>);

/// Starts the reader and the workers.
pub(super) fn started(
    houses: List,
    terms: Terms,
    format: Format,
    jobs: usize,
    keep: bool,
) -> Chunks {
    let (task_in, task_out) = sync_channel::<Task>(2 * jobs);
    let (done_in, done) = sync_channel(2 * jobs);
    let (ticket_in, tickets) = sync_channel(8 * jobs);
    thread::spawn(move || cut(houses, &task_in, &ticket_in));
    let tasks = Arc::new(Mutex::new(task_out));
    for _ in 0..jobs {
        let (tasks, done) = (Arc::clone(&tasks), done_in.clone());
        thread::spawn(move || work(&tasks, &done, terms, format, keep));
    }
    Chunks { done, tickets, early: BTreeMap::new(), next: 0 }
}

/// Cuts the houses into chunks, each with a ticket; ends where nobody wants more.
fn cut(mut houses: List, tasks: &SyncSender<Task>, tickets: &SyncSender<()>) {
    for number in 0.. {
        let chunk = chunk_of(&mut houses);
        if chunk.is_empty() || tickets.send(()).is_err() || tasks.send((number, chunk)).is_err() {
            return;
        }
    }
}

/// The next houses: not more than there are without waiting, so that whoever sends one and waits for its
/// answer gets it.
fn chunk_of(houses: &mut List) -> Vec<Waiting> {
    let (mut chunk, mut bytes) = (Vec::new(), 0);
    for (waiting, is_last) in houses {
        bytes += waiting.bytes();
        chunk.push(waiting);
        if is_last || chunk.len() == MOST_HOUSES || bytes > MOST_BYTES {
            break;
        }
    }
    chunk
}

fn work(
    tasks: &Mutex<Receiver<Task>>,
    done: &SyncSender<Chunk>,
    terms: Terms,
    format: Format,
    keep: bool,
) {
    loop {
        let task = tasks.lock().ok().and_then(|tasks| tasks.recv().ok());
        let Some((number, waiting)) = task else { return };
        let mut chunk = Chunk {
            number,
            bytes: Vec::new(),
            count: u64::try_from(waiting.len()).unwrap_or(0),
            faulty: false,
            houses: Vec::new(),
        };
        for waiting in waiting {
            let house = house(waiting, &terms);
            chunk.faulty |= !house.faults.is_empty();
            output::append(&mut chunk.bytes, &house, format);
            if keep {
                chunk.houses.push(house);
            }
        }
        if done.send(chunk).is_err() {
            return;
        }
    }
}

/// One house worked out. A mistake of this program is a fault of one row, not the end of a million others.
fn house(waiting: Waiting, terms: &Terms) -> Outcome {
    let (id, given) = waiting.given();
    std::panic::catch_unwind(|| worked_out(&id, &given, terms)).unwrap_or_else(|_| Outcome {
        id: id.clone(),
        faults: vec!["fairfoot made a mistake on this house; please tell its makers".to_owned()],
        ..Outcome::default()
    })
}

impl Chunks {
    /// The next chunk; none after the last.
    pub(super) fn next(&mut self) -> Option<Chunk> {
        loop {
            if let Some(chunk) = self.early.remove(&self.next) {
                self.next += 1;
                let _ = self.tickets.try_recv();
                return Some(chunk);
            }
            let chunk = self.done.recv().ok()?;
            self.early.insert(chunk.number, chunk);
        }
    }
}
