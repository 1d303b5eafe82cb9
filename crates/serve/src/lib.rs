//! The live page of an axle, on this machine only; does not know the physics.
//!
//! [`Server`] listens on the loopback interface alone and answers whoever knows the random token of its address. A page
//! asks with a start (a file or a typical axle) and the values of its controls; a document is changed by the rules of
//! `--set`, solved by the same calls as the command line, and answered by the same JSON documents.
//!
//! ```text
//! GET  controls?from=…   what can be moved, from a file or a typical axle; the problems of a file
//! POST figures           flex, tire face and picture of a case          (while a slider moves)
//! POST checks            the worst strength check of all cases
//! POST rating, money, remedies, bump                                    (slower, when asked for)
//! POST save              a model file of its own, never over another
//! GET  report?ask=…      the HTML report
//! GET  disk              whether the file has changed
//! ```

mod apply;
mod bump;
mod choice;
mod controls;
mod disk;
mod door;
mod explain;
mod figures;
mod lanes;
mod money;
mod routes;
mod save;
mod server;
mod stiffener;
mod trouble;
mod values;

pub use server::{ReportMaker, ServeOptions, Server};
