//! The page of Remount: state, views, charts and bindings. Every number comes from `gear_math`.
