//! Objects from JavaScript, read strictly: what is undefined counts as left out, a key that is not known is refused, and what
//! cannot be taken is named by its place.

use crate::api::misfit;
use js_sys::{Array, Object};
use serde::de::value::{MapDeserializer, SeqDeserializer};
use serde::de::{Deserializer, Error as _, IntoDeserializer, Visitor};
use serde::forward_to_deserialize_any;
use serde_wasm_bindgen::Error;
use wasm_bindgen::{JsCast, JsValue};

/// A value with everything in it.
pub(crate) struct Strict {
    value: JsValue,
    /// Where it stands in what was given, such as `bike.rings[1]`.
    place: String,
}

impl Strict {
    /// What a function was given.
    pub(crate) fn given(value: JsValue) -> Self {
        Self { value, place: String::new() }
    }

    fn inside(&self, key: &str) -> String {
        if self.place.is_empty() { key.to_owned() } else { format!("{}.{key}", self.place) }
    }

    /// What an object holds.
    fn entries(&self) -> Result<Vec<(String, Self)>, Error> {
        let entry = |pair: JsValue| {
            let pair = Array::from(&pair);
            let (key, value) = (pair.get(0).as_string().unwrap_or_default(), pair.get(1));
            let place = self.inside(&key);
            (!value.is_undefined()).then_some((key, Self { value, place }))
        };
        let object = self
            .value
            .dyn_ref::<Object>()
            .ok_or_else(|| Error::custom(misfit::placed(&self.place, "one object is expected")))?;
        Ok(Object::entries(object).iter().filter_map(entry).collect())
    }

    fn plain(self) -> serde_wasm_bindgen::Deserializer {
        self.value.into()
    }
}

/// An error with the place of what it is about.
fn at(place: String) -> impl FnOnce(Error) -> Error {
    move |error| Error::custom(misfit::placed(&place, &error.to_string()))
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
        let place = self.place.clone();
        self.plain().deserialize_any(visitor).map_err(at(place))
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _name: &'static str,
        fields: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Error> {
        let entries = self.entries()?;
        match entries.iter().find(|(key, _)| !fields.contains(&key.as_str())) {
            Some((unknown, _)) => Err(Error::custom(misfit::placed(
                &self.place,
                &format!("{unknown} is not known here; known are {}", fields.join(", ")),
            ))),
            None => visitor.visit_map(MapDeserializer::new(entries.into_iter())).map_err(at(self.place)),
        }
    }

    /// What a structure that takes another one into itself asks for; it knows its fields itself.
    fn deserialize_map<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        visitor.visit_map(MapDeserializer::new(self.entries()?.into_iter())).map_err(at(self.place))
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        if self.value.is_null() || self.value.is_undefined() {
            visitor.visit_none()
        } else {
            visitor.visit_some(self)
        }
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        let Some(array) = self.value.dyn_ref::<Array>() else {
            let place = self.place.clone();
            return match self.value.is_object() {
                true => self.plain().deserialize_seq(visitor).map_err(at(place)),
                false => self.deserialize_any(visitor),
            };
        };
        let item = |(index, value)| Self { value, place: format!("{}[{index}]", self.place) };
        visitor.visit_seq(SeqDeserializer::new(array.iter().enumerate().map(item)))
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        name: &'static str,
        variants: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Error> {
        let place = self.place.clone();
        self.plain().deserialize_enum(name, variants, visitor).map_err(at(place))
    }

    forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf unit unit_struct
        newtype_struct tuple tuple_struct identifier ignored_any
    }
}
