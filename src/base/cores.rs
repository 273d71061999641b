//! Work that is the same for many things, on every core.

use std::num::NonZero;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

/// Of fewer things a thread takes longer to begin than it saves. Ours.
const WORTH_THREADS: usize = 16;
/// Items that a thread takes at a time. Ours.
const BLOCK: usize = 8;

/// What `work` makes of each item, in their order. On one core, or of few items, without threads.
pub fn on_every_core<T: Sync, R: Send>(items: &[T], work: impl Fn(&T) -> R + Sync) -> Vec<R> {
    let cores = if items.len() < WORTH_THREADS { 1 } else { cores() };
    on_cores(cores, BLOCK, items, work)
}

/// The cores there are, 1 where that is not known.
pub(crate) fn cores() -> usize {
    thread::available_parallelism().map_or(1, NonZero::get)
}

/// The same on so many cores, each of which takes `block` items (1 or more) at a time.
pub(crate) fn on_cores<T: Sync, R: Send>(
    cores: usize,
    block: usize,
    items: &[T],
    work: impl Fn(&T) -> R + Sync,
) -> Vec<R> {
    if cores < 2 {
        return items.iter().map(work).collect();
    }
    let blocks: Vec<&[T]> = items.chunks(block.max(1)).collect();
    let (next, work) = (AtomicUsize::new(0), &work);
    // Each thread takes the next block that nobody has, so that none waits for a slow one.
    let some = || {
        let mut made: Vec<(usize, Vec<R>)> = Vec::new();
        loop {
            let at = next.fetch_add(1, Ordering::Relaxed);
            let Some(block) = blocks.get(at) else { return made };
            made.push((at, block.iter().map(work).collect()));
        }
    };
    let mut made: Vec<(usize, Vec<R>)> = thread::scope(|scope| {
        let others: Vec<_> = (1..cores.min(blocks.len())).map(|_| scope.spawn(some)).collect();
        let own = some();
        let others = others.into_iter();
        let others = others.flat_map(|other| other.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic)));
        own.into_iter().chain(others).collect()
    });
    made.sort_unstable_by_key(|(at, _)| *at);
    made.into_iter().flat_map(|(_, block)| block).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_order_stays_however_many_there_are() {
        for count in [0, 1, 15, 16, 17, 1000] {
            let items: Vec<usize> = (0..count).collect();
            let twice: Vec<usize> = items.iter().map(|item| 2 * item).collect();
            assert_eq!(on_every_core(&items, |item| 2 * item), twice);
        }
    }
}
