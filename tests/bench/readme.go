package bench

import (
	"errors"
	"os"
	"strings"
)

// WriteBetween replaces the text between the two marks of that name in a Markdown file.
func WriteBetween(path, name, table string) error {
	begin, end := "<!-- "+name+": begins -->\n", "<!-- "+name+": ends -->\n"
	text, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	head, rest, found := strings.Cut(string(text), begin)
	_, tail, ended := strings.Cut(rest, end)
	if !found || !ended {
		return errors.New(path + ": expected the two marks of the table " + name)
	}
	return os.WriteFile(path, []byte(head+begin+table+end+tail), 0o644)
}
