//! Computes houses on several cores, and returns them in the order they came in.
//!
//! A reader divides the houses into chunks, workers compute them, and the chunks are put back in order. Each chunk
//! in progress holds a ticket, which is returned only when the chunk has been handed on. So a slow consumer stops
//! the reader, and memory does not grow.

use std::collections::BTreeMap;
use std::sync::mpsc::{Receiver, SyncSender, sync_channel};
use std::sync::{Arc, Mutex};
use std::thread;

use fairfoot::batch::{BatchOptions, Outcome, compute};

use crate::cli::batch::houses::{List, Waiting};
use crate::cli::batch::{Format, output};

/// The most houses in a chunk.
const MOST_HOUSES: usize = 64;
/// No house is added to a chunk that holds more bytes than this.
const MOST_BYTES: usize = 1 << 20;

/// Computed houses, ready to be written.
pub(super) struct Chunk {
    number: u64,
    pub(super) bytes: Vec<u8>,
    pub(super) count: u64,
    pub(super) faulty: bool,
    /// The houses themselves, if a summary needs them.
    pub(super) houses: Vec<Outcome>,
}

/// The finished chunks, in the order of their houses.
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
    batch_options: BatchOptions,
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
        thread::spawn(move || work(&tasks, &done, batch_options, format, keep));
    }
    Chunks { done, tickets, early: BTreeMap::new(), next: 0 }
}

/// Divides the houses into chunks, each with a ticket; ends once no more are wanted.
fn cut(mut houses: List, tasks: &SyncSender<Task>, tickets: &SyncSender<()>) {
    for number in 0.. {
        let chunk = chunk_of(&mut houses);
        if chunk.is_empty() || tickets.send(()).is_err() || tasks.send((number, chunk)).is_err() {
            return;
        }
    }
}

/// The next houses, but only those available without waiting, so that someone who sends one house and waits gets
/// its answer.
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
    batch_options: BatchOptions,
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
            let house = house(waiting, &batch_options);
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

/// Computes one house. A bug in fairfoot becomes an error of this row instead of ending a run of millions.
fn house(waiting: Waiting, batch_options: &BatchOptions) -> Outcome {
    let (id, given) = waiting.given();
    std::panic::catch_unwind(|| compute(&id, &given, batch_options)).unwrap_or_else(|_| Outcome {
        id: id.clone(),
        faults: vec!["internal error on this house; please report it with this input".to_owned()],
        ..Outcome::default()
    })
}

impl Chunks {
    /// The next chunk; `None` after the last.
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
