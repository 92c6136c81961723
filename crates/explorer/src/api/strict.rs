//! Objects from JavaScript, read strictly: what is undefined counts as left out, and a key that is not known is refused.

use js_sys::{Array, Object};
use serde::de::value::{MapDeserializer, SeqDeserializer};
use serde::de::{Deserializer, Error as _, IntoDeserializer, Visitor};
use serde::forward_to_deserialize_any;
use serde_wasm_bindgen::Error;
use wasm_bindgen::{JsCast, JsValue};

/// A value with everything in it.
pub(crate) struct Strict(pub(crate) JsValue);

impl Strict {
    /// What an object holds.
    fn entries(&self) -> Result<Vec<(String, Self)>, Error> {
        let entry = |pair: JsValue| {
            let pair = Array::from(&pair);
            let value = pair.get(1);
            (!value.is_undefined()).then(|| (pair.get(0).as_string().unwrap_or_default(), Self(value)))
        };
        let object = self.0.dyn_ref::<Object>().ok_or_else(|| Error::custom("one object is expected"))?;
        Ok(Object::entries(object).iter().filter_map(entry).collect())
    }

    fn plain(self) -> serde_wasm_bindgen::Deserializer {
        self.0.into()
    }
}

impl IntoDeserializer<'_, Error> for Strict {
    type Deserializer = Self;

    fn into_deserializer(self) -> Self {
        self
    }
}

impl<'de> Deserializer<'de> for Strict {
    type Error = Error;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        self.plain().deserialize_any(visitor)
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _name: &'static str,
        fields: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Error> {
        let entries = self.entries()?;
        match entries.iter().find(|(key, _)| !fields.contains(&key.as_str())) {
            Some((unknown, _)) => {
                Err(Error::custom(format!("{unknown} is not known here; known are {}", fields.join(", "))))
            }
            None => visitor.visit_map(MapDeserializer::new(entries.into_iter())),
        }
    }

    /// What a structure that takes another one into itself asks for; it knows its fields itself.
    fn deserialize_map<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        visitor.visit_map(MapDeserializer::new(self.entries()?.into_iter()))
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        if self.0.is_null() || self.0.is_undefined() {
            visitor.visit_none()
        } else {
            visitor.visit_some(self)
        }
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        match self.0.dyn_ref::<Array>() {
            Some(array) => visitor.visit_seq(SeqDeserializer::new(array.iter().map(Self))),
            None if self.0.is_object() => self.plain().deserialize_seq(visitor),
            None => self.deserialize_any(visitor),
        }
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        name: &'static str,
        variants: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Error> {
        self.plain().deserialize_enum(name, variants, visitor)
    }

    forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf unit unit_struct
        newtype_struct tuple tuple_struct identifier ignored_any
    }
}
