package figures

import (
	"html/template"
	"strings"
)

var tables = template.Must(template.New("tables").Parse(`<nav aria-label="Topics"><ul class="topics">
{{- range .}}<li><a href="#{{.ID}}">{{.Title}}</a></li>
{{end}}</ul></nav>
{{- range .}}
<section id="{{.ID}}" class="topic"><h2>{{.Title}}</h2>
{{with .About}}<p>{{.}}</p>
{{end}}<table><caption class="visually-hidden">{{.Title}}: figures and sources</caption>
<thead><tr><th scope="col">What</th><th scope="col">Figures</th><th scope="col">Source</th></tr></thead>
<tbody>
{{range .Entries}}<tr data-entry><th scope="row">{{.Name}}</th><td>{{range $i, $f := .Figures}}{{if $i}}<br>{{end}}{{$f}}{{end}}</td><td>{{.Source}}</td></tr>
{{end}}</tbody></table>
{{if .Parts}}<table><caption>Its parts</caption>
<thead><tr><th scope="col">Part</th><th scope="col">Figures</th></tr></thead>
<tbody>
{{range .Parts}}<tr data-part><th scope="row">{{.Name}}</th><td>{{range $i, $f := .Figures}}{{if $i}}<br>{{end}}{{$f}}{{end}}</td></tr>
{{end}}</tbody></table>
{{end}}</section>
{{- end}}`))

// Tables writes all topics as markup.
func Tables() (string, error) {
	all, err := All()
	if err != nil {
		return "", err
	}
	var b strings.Builder
	err = tables.Execute(&b, all)
	return b.String(), err
}
