package figures

import "strings"

// figures spells out what an object holds, a line for each member, but for what has
// a source of its own.
func figures(n *node) []string {
	if n == nil {
		return nil
	}
	if n.kind != 'o' {
		return []string{value(n)}
	}
	var all []string
	for _, m := range n.members {
		_, ofAnother := strings.CutSuffix(m.key, "_source")
		if ofAnother || silent(m) || n.get(m.key+"_source") != nil || sourced(m.value) {
			continue
		}
		if m.key == "ways" {
			all = append(all, figures(m.value)...)
		} else if s := spell(m.key, m.value); s != "" {
			all = append(all, s)
		}
	}
	return all
}

// silent says whether a member holds no figure.
func silent(m member) bool {
	texts := m.value.kind == 's' || m.value.kind == 'a' && len(m.value.items) > 0 && m.value.items[0].kind == 's'
	return unshown[m.key] || texts && unread[m.key]
}

// sourced says whether an entry of its own is made of it, or of each of its items.
func sourced(n *node) bool {
	if n.kind == 'a' && len(n.items) > 0 {
		return sourced(n.items[0])
	}
	return n.kind == 'o' && n.get("source") != nil
}

// spell gives a member with its label.
func spell(key string, n *node) string {
	v := value(n)
	if v == "" {
		return ""
	}
	if n.kind == 'o' {
		return label(key) + ": " + v
	}
	return label(key) + " " + v
}

func value(n *node) string {
	switch n.kind {
	case 'o':
		if n.get("us") != nil && len(n.members) == 2 {
			return worded(n)
		}
		return nested(n)
	case 'a':
		return row(n)
	case 's':
		if v, ok := values[n.scalar]; ok {
			return v
		}
		return strings.ReplaceAll(n.scalar, "_", " ")
	}
	return n.scalar
}

// nested is an object inside another, in brackets where it holds several figures.
func nested(n *node) string {
	all := figures(n)
	if len(all) > 1 {
		return "(" + strings.Join(all, "; ") + ")"
	}
	return strings.Join(all, "")
}

func worded(n *node) string {
	us, uk := n.get("us").text(), n.get("uk").text()
	if us == uk {
		return us
	}
	return us + " / " + uk
}

// row gives numbers with a stroke between them, and anything else with a comma.
func row(n *node) string {
	sep := ", "
	var all []string
	for _, item := range n.items {
		if item.kind == 'n' {
			sep = " / "
		}
		v := value(item)
		if item.kind == 'o' && (item.get("name") != nil || item.get("id") != nil) && v != "" {
			v = nameOf(item, "") + " " + v
		}
		if v != "" {
			all = append(all, v)
		}
	}
	return strings.Join(all, sep)
}
