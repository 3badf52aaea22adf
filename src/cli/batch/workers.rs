//! Houses worked out on several cores and handed on in the order in which they came.
//!
//! A reader cuts the houses into chunks, workers take them, and the chunks are put in order again. There are
//! no more chunks on the way than tickets; a ticket comes back only once its chunk is handed on, so that a
//! reader downstream that is slow stops the reader upstream, and memory stays as it is.

use std::collections::BTreeMap;
use std::sync::mpsc::{Receiver, SyncSender, sync_channel};
use std::sync::{Arc, Mutex};
use std::thread;

use fairfoot::batch::{House, Terms, worked_out};

use crate::cli::batch::houses::Waiting;
use crate::cli::batch::{Format, output};

/// Houses in a chunk.
const CHUNK: usize = 64;

/// Houses that were worked out, as they are to be written.
pub(super) struct Chunk {
    number: u64,
    pub(super) bytes: Vec<u8>,
    pub(super) count: u64,
    pub(super) faulty: bool,
    /// The houses themselves, where a summary wants them.
    pub(super) houses: Vec<House>,
}

/// Chunks in the order of their houses.
pub(super) struct Chunks {
    done: Receiver<Chunk>,
    tickets: Receiver<()>,
    early: BTreeMap<u64, Chunk>,
    next: u64,
}

type Task = (u64, u64, Vec<Waiting>);

/// Starts the reader and the workers.
pub(super) fn started(
    houses: Box<dyn Iterator<Item = Waiting> + Send>,
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
fn cut(
    mut houses: Box<dyn Iterator<Item = Waiting> + Send>,
    tasks: &SyncSender<Task>,
    tickets: &SyncSender<()>,
) {
    let (mut number, mut first) = (0, 1);
    loop {
        let chunk: Vec<Waiting> = houses.by_ref().take(CHUNK).collect();
        let count = u64::try_from(chunk.len()).unwrap_or(0);
        if count == 0 || tickets.send(()).is_err() || tasks.send((number, first, chunk)).is_err() {
            return;
        }
        number += 1;
        first += count;
    }
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
        let Some((number, first, waiting)) = task else { return };
        let mut chunk = Chunk {
            number,
            bytes: Vec::new(),
            count: u64::try_from(waiting.len()).unwrap_or(0),
            faulty: false,
            houses: Vec::new(),
        };
        for (waiting, number) in waiting.into_iter().zip(first..) {
            let (id, given) = waiting.given(number);
            let house = worked_out(&id, &given, &terms);
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
