//! Keys of what is said: one table gives the type, the text it is known by and the list of all.

/// An enum whose variants are known by a text: in JSON and in `content/messages.toml`.
macro_rules! keys {
    (
        $(#[$about:meta])*
        $vis:vis enum $name:ident {
            $($(#[$each:meta])* $variant:ident = $key:literal,)+
        }
    ) => {
        $(#[$about])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        $vis enum $name {
            $($(#[$each])* $variant,)+
        }

        impl $name {
            /// All of them, in the order of the table.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];

            /// The text it is known by.
            #[must_use]
            pub const fn key(self) -> &'static str {
                match self {
                    $(Self::$variant => $key,)+
                }
            }
        }

        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.serialize_str(self.key())
            }
        }
    };
}
pub(crate) use keys;
