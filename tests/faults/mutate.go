package main

import (
	"go/ast"
	"go/token"
	"strconv"
)

// fault is one fault: a piece of the source and its replacement.
type fault struct {
	from, to int // offsets in the file
	text     string
	what     string
}

// others are the operators that a person or a merge might have written instead.
var others = map[token.Token][]string{
	token.LSS: {"<=", ">="}, token.LEQ: {"<", ">"}, token.GTR: {">=", "<="}, token.GEQ: {">", "<"},
	token.EQL: {"!="}, token.NEQ: {"=="}, token.ADD: {"-"}, token.SUB: {"+"}, token.MUL: {"/"}, token.QUO: {"*"},
	token.LAND: {"||"}, token.LOR: {"&&"}, token.SHL: {">>"}, token.SHR: {"<<"},
	token.ADD_ASSIGN: {"-="}, token.SUB_ASSIGN: {"+="}, token.MUL_ASSIGN: {"/="}, token.INC: {"--"}, token.DEC: {"++"},
}

// faultsIn lists every fault that can be made in one file.
func faultsIn(set *token.FileSet, file *ast.File, source []byte) (out []fault) {
	at := func(p token.Pos) int { return set.Position(p).Offset }
	put := func(from, to int, text string) {
		out = append(out, fault{from, to, text, string(source[from:to]) + " → " + text})
	}
	operator := func(p token.Pos, op token.Token) {
		for _, other := range others[op] {
			put(at(p), at(p)+len(op.String()), other)
		}
	}
	ast.Inspect(file, func(n ast.Node) bool {
		switch x := n.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.BinaryExpr:
			operator(x.OpPos, x.Op)
		case *ast.AssignStmt:
			operator(x.TokPos, x.Tok)
		case *ast.IncDecStmt:
			operator(x.TokPos, x.Tok)
		case *ast.BasicLit:
			if v, err := strconv.Atoi(x.Value); x.Kind == token.INT && err == nil {
				put(at(x.Pos()), at(x.End()), strconv.Itoa(v+1))
				if v > 0 {
					put(at(x.Pos()), at(x.End()), strconv.Itoa(v-1))
				}
			}
		case *ast.IfStmt:
			condition := string(source[at(x.Cond.Pos()):at(x.Cond.End())])
			put(at(x.Cond.Pos()), at(x.Cond.End()), "!("+condition+")")
			put(at(x.Cond.Pos()), at(x.Cond.End()), "false && ("+condition+")")
		case *ast.CallExpr:
			for k := 1; k < len(x.Args); k++ {
				a, b := x.Args[k-1], x.Args[k]
				one, two := string(source[at(a.Pos()):at(a.End())]), string(source[at(b.Pos()):at(b.End())])
				if one != two {
					put(at(a.Pos()), at(b.End()), two+string(source[at(a.End()):at(b.Pos())])+one)
				}
			}
		}
		return true
	})
	return out
}
