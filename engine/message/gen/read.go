package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strconv"
	"strings"
)

// written is the file of the Go code that writes replies.
const written = "replies_written.go"

// structure is one struct that replies are made of.
type structure struct {
	name, about string
	reply       string // the kind of reply, empty for a part of one
	members     []member
}

// member is one field. An embedded one has no JSON name.
type member struct {
	field, json string
	leaveOut    bool // when it is empty
	types       ast.Expr
	ts          string // its type in TypeScript, where the tag gives one
}

// read reads the structs in the files reply*.go and replies*.go of a folder.
func read(dir string) ([]structure, error) {
	names, err := filepath.Glob(filepath.Join(dir, "repl*.go"))
	if err != nil {
		return nil, err
	}
	var out []structure
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") || filepath.Base(name) == written {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments)
		if err != nil {
			return nil, err
		}
		found, err := structures(file)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", filepath.Base(name), err)
		}
		out = append(out, found...)
	}
	return out, nil
}

func structures(file *ast.File) (out []structure, err error) {
	for _, d := range file.Decls {
		g, ok := d.(*ast.GenDecl)
		if !ok || g.Tok != token.TYPE {
			continue
		}
		t := g.Specs[0].(*ast.TypeSpec)
		s, ok := t.Type.(*ast.StructType)
		if !ok || !t.Name.IsExported() {
			continue
		}
		one := structure{name: t.Name.Name, about: g.Doc.Text()}
		for _, c := range g.Doc.List {
			if kind, ok := strings.CutPrefix(c.Text, "//reply:"); ok {
				one.reply = kind
			}
		}
		if one.members, err = members(s); err != nil {
			return nil, fmt.Errorf("%s: %w", one.name, err)
		}
		out = append(out, one)
	}
	return out, nil
}

func members(s *ast.StructType) (out []member, err error) {
	for _, f := range s.Fields.List {
		if len(f.Names) == 0 {
			name := f.Type
			if p, ok := name.(*ast.StarExpr); ok {
				name = p.X
			}
			out = append(out, member{field: name.(*ast.Ident).Name, types: f.Type})
			continue
		}
		if f.Tag == nil {
			return nil, fmt.Errorf("%s has no tag", f.Names[0].Name)
		}
		tag, err := strconv.Unquote(f.Tag.Value)
		if err != nil {
			return nil, err
		}
		name, options, _ := strings.Cut(tagged(tag, "json"), ",")
		if name == "" {
			return nil, fmt.Errorf("%s has no name in JSON", f.Names[0].Name)
		}
		out = append(out, member{f.Names[0].Name, name, options == "omitempty", f.Type, tagged(tag, "ts")})
	}
	return out, nil
}

// tagged returns one value of a field's tag, in the form that package reflect describes.
func tagged(tag, key string) string {
	_, rest, ok := strings.Cut(" "+tag, " "+key+":")
	if !ok {
		return ""
	}
	quoted, err := strconv.QuotedPrefix(rest)
	if err != nil {
		return ""
	}
	value, err := strconv.Unquote(quoted)
	if err != nil {
		return ""
	}
	return value
}
