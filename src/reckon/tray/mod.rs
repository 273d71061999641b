//! A tray's readiness.
