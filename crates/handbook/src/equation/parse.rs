//! From the text of a body to its tree. The grammar is the small part of Rust that bodies use.

use super::{Condition, Line, Tree};

/// Parses one expression.
///
/// # Errors
/// What could not be read, with the rest of the text.
pub fn parse(text: &str) -> Result<Tree, String> {
    let mut parser = Parser::new(text);
    let tree = parser.expression()?;
    parser.end()?;
    Ok(tree)
}

/// Parses a body: `let name = expression;` lines and a last expression.
///
/// # Errors
/// What could not be read, with the rest of the text.
pub fn parse_lines(text: &str) -> Result<Vec<Line>, String> {
    let mut parser = Parser::new(text);
    let lines = parser.lines()?;
    parser.end()?;
    Ok(lines)
}

struct Parser {
    tokens: Vec<String>,
    at: usize,
}

impl Parser {
    fn new(text: &str) -> Self {
        Self { tokens: tokens(text), at: 0 }
    }
    fn peek(&self) -> &str {
        self.tokens.get(self.at).map_or("", String::as_str)
    }
    fn next(&mut self) -> String {
        let token = self.peek().to_owned();
        self.at += 1;
        token
    }
    fn take(&mut self, token: &str) -> bool {
        let here = self.peek() == token;
        if here {
            self.at += 1;
        }
        here
    }
    fn need(&mut self, token: &str) -> Result<(), String> {
        if self.take(token) { Ok(()) } else { Err(self.fault(&format!("expected {token}"))) }
    }
    fn fault(&self, reason: &str) -> String {
        let rest: Vec<_> = self.tokens[self.at.min(self.tokens.len())..].iter().take(8).cloned().collect();
        format!("{reason} before \"{}\"", rest.join(" "))
    }
    fn end(&self) -> Result<(), String> {
        if self.at >= self.tokens.len() { Ok(()) } else { Err(self.fault("unexpected text")) }
    }

    fn lines(&mut self) -> Result<Vec<Line>, String> {
        let mut lines = Vec::new();
        while self.take("let") {
            let name = self.next();
            if self.take(":") {
                self.next();
            }
            self.need("=")?;
            let tree = self.expression()?;
            self.need(";")?;
            lines.push(Line { name: Some(name), tree });
        }
        lines.push(Line { name: None, tree: self.expression()? });
        Ok(lines)
    }

    fn block(&mut self) -> Result<Tree, String> {
        self.need("{")?;
        let tree = self.expression()?;
        self.need("}")?;
        Ok(tree)
    }

    fn expression(&mut self) -> Result<Tree, String> {
        if self.take("if") {
            let condition = self.condition()?;
            let then = self.block()?;
            self.need("else")?;
            let other = if self.peek() == "if" { self.expression()? } else { self.block()? };
            return Ok(Tree::If(Box::new(condition), Box::new(then), Box::new(other)));
        }
        let mut left = self.product()?;
        loop {
            let operator = match self.peek() {
                "+" => '+',
                "-" => '-',
                _ => return Ok(left),
            };
            self.at += 1;
            left = Tree::Binary(operator, Box::new(left), Box::new(self.product()?));
        }
    }

    fn condition(&mut self) -> Result<Condition, String> {
        let left = self.expression()?;
        let compare = ["<=", ">=", "==", "<", ">"]
            .into_iter()
            .find(|c| *c == self.peek())
            .ok_or_else(|| self.fault("expected a comparison"))?;
        self.at += 1;
        let first = Condition::Compare(compare, left, self.expression()?);
        for join in ["&&", "||"] {
            if self.take(join) {
                return Ok(Condition::Join(join, Box::new(first), Box::new(self.condition()?)));
            }
        }
        Ok(first)
    }

    fn product(&mut self) -> Result<Tree, String> {
        let mut left = self.unary()?;
        loop {
            let operator = match self.peek() {
                "*" => '*',
                "/" => '/',
                _ => return Ok(left),
            };
            self.at += 1;
            left = Tree::Binary(operator, Box::new(left), Box::new(self.unary()?));
        }
    }

    fn unary(&mut self) -> Result<Tree, String> {
        if self.take("&") {
            return self.unary();
        }
        if self.take("-") {
            return Ok(Tree::Minus(Box::new(self.unary()?)));
        }
        let mut tree = self.primary()?;
        while self.take(".") {
            let method = self.next();
            let mut args = vec![tree];
            args.extend(self.arguments()?);
            tree = if method == "clone" { args.remove(0) } else { Tree::Call(method, args) };
        }
        Ok(tree)
    }

    fn arguments(&mut self) -> Result<Vec<Tree>, String> {
        self.need("(")?;
        let mut args = Vec::new();
        while !self.take(")") {
            args.push(self.expression()?);
            if !self.take(",") {
                self.need(")")?;
                break;
            }
        }
        Ok(args)
    }

    fn primary(&mut self) -> Result<Tree, String> {
        let token = self.next();
        if token == "(" {
            let tree = self.expression()?;
            self.need(")")?;
            return Ok(tree);
        }
        if token.starts_with(|c: char| c.is_ascii_digit()) {
            let value = token.replace('_', "").parse().map_err(|_| format!("\"{token}\" is not a number"))?;
            return Ok(Tree::Number(value, token));
        }
        if !token.starts_with(|c: char| c.is_alphabetic() || c == '_') {
            self.at -= 1;
            return Err(self.fault("expected a value"));
        }
        let mut path = vec![token];
        while self.take("::") {
            path.push(self.next());
        }
        let last = path[path.len() - 1].clone();
        if self.peek() == "(" {
            let args = self.arguments()?;
            // A pure number as a quantity is the number.
            return match (last.as_str(), args.len()) {
                ("ratio", 1) => Ok(args[0].clone()),
                _ => Ok(Tree::Call(last, args)),
            };
        }
        let first_is_type = path.len() > 1 && path[0].starts_with(char::is_uppercase);
        Ok(if first_is_type { Tree::Word(last) } else { Tree::Name(last) })
    }
}

fn tokens(text: &str) -> Vec<String> {
    let chars: Vec<char> = text.chars().collect();
    let mut tokens = Vec::new();
    let mut i = 0;
    while i < chars.len() {
        let c = chars[i];
        if c.is_whitespace() {
            i += 1;
            continue;
        }
        let start = i;
        if c.is_ascii_digit() {
            while i < chars.len() {
                let exponent = matches!(chars[i], '+' | '-') && matches!(chars[i - 1], 'e' | 'E');
                let part = chars[i].is_ascii_alphanumeric() || chars[i] == '_' || exponent;
                let point = chars[i] == '.' && chars.get(i + 1).is_none_or(|n| !n.is_alphabetic());
                if part || point {
                    i += 1;
                } else {
                    break;
                }
            }
        } else if c.is_alphabetic() || c == '_' {
            while i < chars.len() && (chars[i].is_alphanumeric() || chars[i] == '_') {
                i += 1;
            }
        } else {
            let pair: String = chars[i..(i + 2).min(chars.len())].iter().collect();
            i += if ["::", "<=", ">=", "==", "&&", "||"].contains(&pair.as_str()) { 2 } else { 1 };
        }
        tokens.push(chars[start..i].iter().collect());
    }
    tokens
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bodies_are_read_as_rust_reads_them() {
        let lines =
            parse_lines("let a = 2.0 * -x; if a < 1.0 && b >= 2.0 { pow(a, 2.0) } else { (a + 1.0) / b.sqrt() }");
        assert_eq!(lines.map(|l| l.len()), Ok(2));
        assert_eq!(
            parse("a - b - c").map(|t| matches!(t, Tree::Binary('-', l, _) if matches!(*l, Tree::Binary('-', ..)))),
            Ok(true)
        );
        assert!(parse("a +").is_err());
        assert!(parse("match x { }").is_err());
    }
}
