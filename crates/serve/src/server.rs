//! A server of one live page.

use std::fmt;
use std::io;
use std::net::{Ipv4Addr, TcpListener};
use std::path::PathBuf;
use std::sync::Arc;

use axlebow_model::Document;
use axlebow_report::ModelCard;
use axlebow_study::PaybackStudy;
use axlebow_units::UnitSystem;

use crate::disk::Shelf;
use crate::door::{Door, token};
use crate::lanes::Lanes;
use crate::routes::router;

/// Makes the HTML report of an axle, or says why there is none.
pub type ReportMaker = fn(&Document, &ModelCard) -> Result<String, String>;

/// What a live page is made for.
pub struct ServeOptions {
    /// The model file to begin with; a typical axle without one.
    pub file: Option<PathBuf>,
    /// The port; 0 for one that is free.
    pub port: u16,
    /// Units of the page; those of the file if none.
    pub system: Option<UnitSystem>,
    /// Prices of a payback study, by which money is worked out.
    pub prices: Option<PaybackStudy>,
    /// Makes the report.
    pub report: ReportMaker,
}

/// What every request may use.
pub(crate) struct Live {
    pub options: ServeOptions,
    pub shelf: Shelf,
    pub lanes: Lanes,
}

/// A server of one live page, bound to its port.
pub struct Server {
    listener: TcpListener,
    door: Arc<Door>,
    live: Arc<Live>,
}

impl fmt::Debug for Server {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Server").field("listener", &self.listener).finish_non_exhaustive()
    }
}

impl Server {
    /// Takes the port on the loopback interface and draws the token of its address.
    ///
    /// # Errors
    /// A port that is taken; a system that gives no random numbers.
    pub fn bind(options: ServeOptions) -> io::Result<Server> {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, options.port))?;
        listener.set_nonblocking(true)?;
        let door = Arc::new(Door { port: listener.local_addr()?.port(), token: token()? });
        let shelf = Shelf::new(options.file.clone());
        Ok(Server { listener, door, live: Arc::new(Live { options, shelf, lanes: Lanes::default() }) })
    }

    /// The address of the page. Whoever knows it may use the page.
    pub fn address(&self) -> String {
        self.door.address()
    }

    /// Opens the page in the browser of the system.
    ///
    /// # Errors
    /// A system without one.
    pub fn open_browser(&self) -> io::Result<()> {
        open::that_detached(self.address())
    }

    /// Answers requests until the program ends.
    ///
    /// # Errors
    /// A listener that the system takes away.
    pub fn run(self) -> io::Result<()> {
        let runtime = tokio::runtime::Builder::new_current_thread().enable_io().enable_time().build()?;
        runtime.block_on(async {
            let listener = tokio::net::TcpListener::from_std(self.listener)?;
            axum::serve(listener, router(&self.door, self.live)).await
        })
    }
}
