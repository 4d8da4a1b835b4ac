//! Who is listened to, for how long, and how much at once.

use crate::desk::Desk;
use crate::guard::{self, Guard};
use crate::{api, assets, pages};
use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::http::StatusCode;
use axum::middleware;
use hyper::server::conn::http1;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::service::TowerToHyperService;
use std::io;
use std::net::{IpAddr, Ipv4Addr, SocketAddr};
use std::path::PathBuf;
use std::sync::Arc;
use std::time::Duration;
use stillrise_desk::Trouble;
use stillrise_desk::folder::Folder;
use tokio::net::TcpListener;
use tokio::sync::Semaphore;
use tower_http::catch_panic::CatchPanicLayer;
use tower_http::compression::CompressionLayer;
use tower_http::timeout::TimeoutLayer;

/// What is served, and where.
#[derive(Debug, Clone)]
pub struct Options {
    /// The folder of enquiries.
    pub folder: PathBuf,
    /// The port on the loop-back address; any that is free where none is named.
    pub port: Option<u16>,
}

/// Bytes that a request may bring.
const LARGEST_BODY: usize = 1 << 20;
/// How long the head of a request may take to come.
const HEAD_TIME: Duration = Duration::from_secs(10);
/// How long an answer may take.
const ANSWER_TIME: Duration = Duration::from_secs(60);
/// Connections at a time; more wait until one ends.
const CONNECTIONS: usize = 1024;
/// Pieces of work that may be under way at a time; more wait.
const AT_WORK: usize = 16;

/// Stack of each thread: a job is large, and the main thread of a program, on which it is worked elsewhere, has as much.
pub const STACK: usize = 16 << 20;

/// A server that listens.
pub struct Serving {
    runtime: tokio::runtime::Runtime,
    listener: TcpListener,
    router: Router,
    address: SocketAddr,
    token: String,
}

/// Opens the folder and the port.
///
/// # Errors
/// [`Trouble`] when the folder or the port cannot be had.
pub fn start(options: &Options) -> Result<Serving, Trouble> {
    let machine = |what: &str, error: &dyn core::fmt::Display| Trouble::Machine(format!("{what}: {error}"));
    let folder = Folder::open(&options.folder)?;
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .worker_threads(2)
        .max_blocking_threads(AT_WORK)
        .thread_stack_size(STACK)
        .enable_all()
        .build()
        .map_err(|error| machine("no threads can be had", &error))?;
    let wished = SocketAddr::new(IpAddr::V4(Ipv4Addr::LOCALHOST), options.port.unwrap_or(0));
    let listener = runtime.block_on(TcpListener::bind(wished)).map_err(|error| match error.kind() {
        io::ErrorKind::AddrInUse => Trouble::Machine(format!(
            "port {} is in use, perhaps by another sheet: leave --port out, and one that is free is taken",
            wished.port()
        )),
        _ => machine(&format!("{wished} cannot be listened to"), &error),
    })?;
    let address = listener.local_addr().map_err(|error| machine("the address cannot be told", &error))?;
    let token = guard::token().map_err(|error| machine("no random number can be had", &error))?;
    let guard = Arc::new(Guard::new(address, token.clone()));
    let desk = Arc::new(Desk::new(folder));
    // What a page loads once is compressed; what it asks for at every change goes no further than this machine, where
    // compressing takes longer than it saves.
    let whole = Router::new().merge(pages::routes()).merge(assets::routes()).layer(CompressionLayer::new());
    let router = Router::new()
        .merge(whole)
        .merge(pages::pieces())
        .merge(api::routes())
        .fallback(pages::nothing_there)
        .with_state(desk)
        .layer(DefaultBodyLimit::max(LARGEST_BODY))
        .layer(TimeoutLayer::with_status_code(StatusCode::SERVICE_UNAVAILABLE, ANSWER_TIME))
        .layer(CatchPanicLayer::custom(crate::answer::panicked))
        .layer(middleware::from_fn_with_state(guard, guard::watch));
    Ok(Serving { runtime, listener, router, address, token })
}

impl Serving {
    /// The address to open, of all enquiries or of one: whoever has it may read and change what lies in the folder.
    #[must_use]
    pub fn address(&self, sheet: Option<&str>) -> String {
        let sheet = sheet.map_or_else(String::new, |name| format!("&sheet={}", pages::sheet::encoded(name)));
        format!("http://{}/?key={}{sheet}", self.address, self.token)
    }

    /// The address without the key.
    #[must_use]
    pub fn socket(&self) -> SocketAddr {
        self.address
    }

    /// The key, for programs.
    #[must_use]
    pub fn token(&self) -> &str {
        &self.token
    }

    /// Serves until it is interrupted.
    pub fn run(self) {
        let Self { runtime, listener, router, .. } = self;
        runtime.block_on(async {
            tokio::select! {
                () = accept(listener, router) => {}
                _ = tokio::signal::ctrl_c() => {}
            }
        });
        // What is being saved is finished; who holds a connection open is not waited for.
        runtime.shutdown_timeout(Duration::from_secs(2));
    }
}

/// Takes connections, each on a task of its own.
async fn accept(listener: TcpListener, router: Router) {
    let room = Arc::new(Semaphore::new(CONNECTIONS));
    loop {
        let Ok(place) = Arc::clone(&room).acquire_owned().await else { return };
        // What fails here is one connection, or there are no more handles for the moment.
        let Ok((stream, _)) = listener.accept().await else {
            tokio::time::sleep(Duration::from_millis(20)).await;
            continue;
        };
        let _ = stream.set_nodelay(true);
        let service = TowerToHyperService::new(router.clone());
        tokio::spawn(async move {
            let served = http1::Builder::new()
                .timer(TokioTimer::new())
                .header_read_timeout(HEAD_TIME)
                .serve_connection(TokioIo::new(stream), service)
                .await;
            // Whoever breaks off needs no answer.
            drop((served, place));
        });
    }
}
