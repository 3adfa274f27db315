//! What a query paints with tree-house, the library that Helix colours with:
//! helix-painter GRAMMAR.so QUERY CASES
//! Prints JSON: for each case of colours.json the list of [capture, text], in order.
use std::{cell::RefCell, env, error::Error, fs, path::Path, time::Duration};
use tree_house::highlighter::{Highlight, HighlightEvent, Highlighter};
use tree_house::tree_sitter::Grammar;
use tree_house::{InjectionLanguageMarker, Language, LanguageConfig, LanguageLoader, Syntax};

/// One language, and nothing within it.
struct Alone(LanguageConfig);

impl LanguageLoader for Alone {
    fn language_for_marker(&self, _: InjectionLanguageMarker) -> Option<Language> {
        None
    }

    fn get_config(&self, _: Language) -> Option<&LanguageConfig> {
        Some(&self.0)
    }
}

/// Every capture is a colour of its own; a theme would leave some out.
fn colour_all(config: &LanguageConfig) -> Vec<String> {
    let names = RefCell::new(Vec::<String>::new());
    config.configure(|name| {
        let mut names = names.borrow_mut();
        let known = names.iter().position(|other| other == name);
        let at = known.unwrap_or_else(|| {
            names.push(name.to_string());
            names.len() - 1
        });
        Some(Highlight::new(at as u32))
    });
    names.into_inner()
}

fn paint(text: &str, loader: &Alone, names: &[String]) -> Result<Vec<(String, String)>, Box<dyn Error>> {
    let rope = ropey::Rope::from_str(text);
    let syntax = Syntax::new(rope.slice(..), Language::new(0), Duration::from_secs(5), loader)
        .map_err(|error| format!("{text:?}: {error:?}"))?;
    let mut highlighter = Highlighter::new(&syntax, rope.slice(..), loader, ..);
    let mut active: Vec<usize> = Vec::new();
    let mut pieces = Vec::new();
    let mut from = 0;
    loop {
        let to = (highlighter.next_event_offset() as usize).min(text.len());
        if to > from {
            // The innermost colour is the one that is seen.
            let name = active.last().map_or(String::new(), |&index| names[index].clone());
            pieces.push((name, text[from..to].to_string()));
            from = to;
        }
        if to == text.len() {
            return Ok(pieces);
        }
        let (event, colours) = highlighter.advance();
        if event == HighlightEvent::Refresh {
            active.clear();
        }
        active.extend(colours.map(|colour| colour.idx()));
    }
}

fn main() -> Result<(), Box<dyn Error>> {
    let arguments: Vec<String> = env::args().collect();
    let [_, grammar, query, cases] = &arguments[..] else {
        return Err("helix-painter GRAMMAR.so QUERY CASES".into());
    };
    // SAFETY: the file is the project's own grammar, built by the caller.
    let grammar = unsafe { Grammar::new("sayline", Path::new(grammar)) }?;
    let loader = Alone(LanguageConfig::new(grammar, &fs::read_to_string(query)?, "", "")?);
    let names = colour_all(&loader.0);
    let cases: serde_json::Value = serde_json::from_str(&fs::read_to_string(cases)?)?;
    let mut all = Vec::new();
    for case in cases.as_array().ok_or("the cases are no list")? {
        let text = case["text"].as_str().ok_or("a case without a text")?;
        all.push(paint(text, &loader, &names)?);
    }
    println!("{}", serde_json::to_string(&all)?);
    Ok(())
}
