//! The fixed words of the format.

/// A field that takes one of a few words.
pub trait Word: Copy + Sized + 'static {
    /// Every word and what it stands for, in the order they are offered.
    const WORDS: &'static [(&'static str, Self)];

    /// Returns the word.
    fn word(self) -> &'static str
    where
        Self: PartialEq,
    {
        Self::WORDS.iter().find(|(_, value)| *value == self).map_or("", |(word, _)| word)
    }
}

macro_rules! words {
    ($(#[$doc:meta])* $name:ident { $($(#[$variant_doc:meta])* $variant:ident = $word:literal),+ $(,)? }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Eq, Hash, Ord, PartialEq, PartialOrd)]
        pub enum $name { $($(#[$variant_doc])* $variant),+ }

        impl Word for $name {
            const WORDS: &'static [(&'static str, Self)] = &[$(($word, Self::$variant)),+];
        }
    };
}

impl Word for crate::geometry::Side {
    const WORDS: &'static [(&'static str, Self)] =
        &[("port", Self::Port), ("starboard", Self::Starboard)];
}

words! {
    /// Where the boat lay when she was measured.
    Where {
        /// On her trailer.
        Trailer = "trailer",
        /// On the sand.
        Sand = "sand",
        /// Afloat.
        Afloat = "afloat",
    }
}
words! {
    /// How a rowlock turns on its pin.
    Turns {
        /// By itself.
        Free = "free",
        /// Only when pushed.
        Stiff = "stiff",
        /// Not at all.
        Seized = "seized",
    }
}
words! {
    /// How an oar lifts out of its rowlock by hand.
    Lift {
        /// Without touching.
        Freely = "freely",
        /// With a pull.
        Stiffly = "stiffly",
        /// Not out.
        Jams = "jams",
    }
}
words! {
    /// What an item of the walk round the boat was found to be.
    Condition {
        /// In order.
        Ok = "ok",
        /// Usable; to be watched.
        Watch = "watch",
        /// Not to be used.
        Unfit = "unfit",
    }
}
words! {
    /// What a defect means for use.
    DefectState {
        /// Not to be used.
        Unfit = "unfit",
        /// Usable; to be watched.
        Watch = "watch",
    }
}
words! {
    /// The state of an oar.
    OarState {
        /// In order.
        Sound = "sound",
        /// Usable; to be watched.
        Watch = "watch",
        /// Not to be used.
        Unfit = "unfit",
    }
}
words! {
    /// How a shaft bears in the rowlock.
    Bears {
        /// On a flat: the rowlock sets the blade.
        Flat = "flat",
        /// Round: the hands set the blade.
        Round = "round",
    }
}
words! {
    /// How the leather was when the shaft was measured.
    Leather {
        /// Wet, as in use.
        Wet = "wet",
        /// Dry.
        Dry = "dry",
    }
}
words! {
    /// A part that is bent cold.
    BentPart {
        /// The horn the drive bears on.
        ForwardHorn = "forward-horn",
        /// The other horn.
        AfterHorn = "after-horn",
        /// The pin.
        Pin = "pin",
    }
}
words! {
    /// What a person may put a name to.
    May {
        /// Measure.
        Measure = "measure",
        /// Pass another's work.
        Pass = "pass",
        /// Grant a waiver.
        Waive = "waive",
    }
}
