//! What a design of a study costs, from its numbers to its row, on one thread.

use std::path::Path;

use axlebow_study::{Study, StudyOutcome};
use criterion::{Criterion, Throughput, criterion_group, criterion_main};

fn study(name: &str, values: usize) -> Study {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../studies");
    let bytes = std::fs::read(folder.join(name)).expect("the study is there");
    let study = Study::from_bytes(&bytes, name, &folder);
    study.unwrap_or_else(|problems| panic!("{}", problems.render())).coarse(values)
}

fn run(study: &Study) -> StudyOutcome {
    study.run(&|_, _| ())
}

/// All five dimensions change from design to design by turns; the wall does at every one.
fn designs_of_a_sweep(criterion: &mut Criterion) {
    let threads = rayon::ThreadPoolBuilder::new().num_threads(1).build().expect("a thread can be had");
    let mut group = criterion.benchmark_group("designs of a sweep");
    group.sample_size(10);
    for values in [2, 4, 6] {
        let study = study("five-dimensions.toml", values);
        group.throughput(Throughput::Elements(study.count() as u64));
        group.bench_function(study.count().to_string(), |bencher| {
            threads.install(|| bencher.iter(|| run(&study)));
        });
    }
    group.finish();
}

criterion_group!(benches, designs_of_a_sweep);
criterion_main!(benches);
