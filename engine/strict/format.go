package strict

import "strings"

// Format reads the format of a file, such as "underpaint rates 1": what kind of file it is,
// and a number that grows when older programs can no longer read that kind. It returns one
// of the known formats. A kind that is known with a higher number gets an answer of its
// own, because nothing in such a file is wrong.
func (f Field) Format(known ...string) string {
	if n := f.node(); n != nil {
		for _, k := range known {
			if newer(n.text, k) {
				f.Complain(quote(k) + " (this file was made by a newer version of Underpaint; open it with that version)")
				return ""
			}
		}
	}
	return f.OneOf(known...)
}

// newer reports whether a format is of the same kind as a known one, with a higher number.
func newer(format, known string) bool {
	kind, number := splitFormat(format)
	knownKind, knownNumber := splitFormat(known)
	if kind != knownKind || number == "" || number[0] == '0' || strings.Trim(number, "0123456789") != "" {
		return false
	}
	if len(number) != len(knownNumber) {
		return len(number) > len(knownNumber)
	}
	return number > knownNumber
}

func splitFormat(format string) (kind, number string) {
	i := strings.LastIndexByte(format, ' ')
	return format[:i+1], format[i+1:]
}
