//! The sign of a place or a tray: a shape and dots, drawn and named.

use crate::wording::Wording;

/// The most dots that are drawn; more than this nobody counts at a glance.
const MOST_DOTS: usize = 9;

/// A sign taken apart, to be drawn.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct DrawnSign {
    /// The shape, one letter wide.
    pub shape: &'static str,
    /// The shape's name.
    pub name: String,
    /// How many dots.
    pub dots: usize,
}

impl Wording {
    /// A sign such as "triangle 2" drawn and named: "▲ •• (triangle 2)". Another text is shown as it is.
    pub fn sign(&self, written: &str) -> String {
        match self.drawn_sign(written) {
            Some(DrawnSign { shape, name, dots }) => format!("{shape} {} ({name} {dots})", "•".repeat(dots)),
            None => crate::base::text::cleaned(written),
        }
    }

    /// A sign's shape and dots; none where it is another text.
    pub(crate) fn drawn_sign(&self, written: &str) -> Option<DrawnSign> {
        let folded = crate::base::text::folded(&crate::base::text::cleaned(written));
        let mut words = folded.split([' ', '-', '_']).filter(|word| !word.is_empty());
        let (shape, name) = words.next().and_then(|shape| self.shape(shape))?;
        let dots = words.next().and_then(|dots| dots.parse::<usize>().ok()).filter(|dots| *dots <= MOST_DOTS)?;
        words.next().is_none().then_some(DrawnSign { shape, name, dots })
    }

    fn shape(&self, word: &str) -> Option<(&'static str, String)> {
        Some(match word {
            "triangle" | "triangulo" => ("▲", self.sign_triangle()),
            "circle" | "circulo" => ("●", self.sign_circle()),
            "square" | "cuadrado" | "cuadro" => ("■", self.sign_square()),
            "diamond" | "rombo" | "diamante" => ("◆", self.sign_diamond()),
            "star" | "estrella" => ("★", self.sign_star()),
            "cross" | "cruz" => ("✚", self.sign_cross()),
            _ => return None,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wording::Lang;

    #[test]
    fn a_sign_is_drawn_and_named_and_what_is_no_shape_stays_as_it_is() {
        let (en, es) = (Wording::new(Lang::En), Wording::new(Lang::Es));
        assert_eq!(en.sign("triangle 3"), "▲ ••• (triangle 3)");
        assert_eq!(es.sign("triangle 3"), "▲ ••• (triángulo 3)");
        assert_eq!(es.sign("Círculo 1"), "● • (círculo 1)");
        assert_eq!(en.sign("red ribbon"), "red ribbon");
        assert_eq!(en.sign("circle 40"), "circle 40");
        assert_eq!(en.sign("circle"), "circle");
    }
}
