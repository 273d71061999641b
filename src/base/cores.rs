//! Work that is the same for many things, on every core.

use std::num::NonZero;
use std::thread;

/// Of fewer things a thread takes longer to begin than it saves. Ours.
const WORTH_THREADS: usize = 16;

/// What `work` makes of each item, in their order. On one core, or of few items, without threads.
pub fn on_every_core<T: Sync, R: Send>(items: &[T], work: impl Fn(&T) -> R + Sync) -> Vec<R> {
    let cores = thread::available_parallelism().map_or(1, NonZero::get);
    if cores < 2 || items.len() < WORTH_THREADS {
        return items.iter().map(work).collect();
    }
    let work = &work;
    thread::scope(|scope| {
        let share = items.len().div_ceil(cores);
        let parts: Vec<_> =
            items.chunks(share).map(|part| scope.spawn(move || part.iter().map(work).collect::<Vec<R>>())).collect();
        let made = parts.into_iter().map(|part| part.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic)));
        made.flatten().collect()
    })
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
