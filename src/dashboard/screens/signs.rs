//! Signs of stages and standings with their words, for help and for what stands under a drawing.

use crate::base::word::Word;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::{stage_mark, standing_mark};
use crate::reckon::picture::{Stage, Standing};

/// The stages of a tray in which something lives, each with its sign.
pub(crate) fn stage_signs(cx: &ScreenContext<'_>) -> Vec<(String, String)> {
    let living = Stage::WORDS.iter().map(|(stage, _)| *stage).filter(|stage| *stage != Stage::Spent);
    living.map(|stage| (stage_mark(stage).0.to_string(), cx.wording.stage_name(stage))).collect()
}

/// How a bed can stand, each with its sign.
pub(crate) fn standing_signs(cx: &ScreenContext<'_>) -> Vec<(String, String)> {
    let all = Standing::WORDS.iter().map(|(standing, _)| *standing);
    all.map(|standing| (standing_mark(standing).0.to_string(), cx.wording.standing_name(standing))).collect()
}
