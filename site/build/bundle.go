package build

import (
	"errors"
	"fmt"
	"path"
	"slices"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// Every page has a folder of its own, and in it the script and the style sheet that
// lead to all others. Workers have one script each.
const (
	scriptSource = "page.ts"
	styleSource  = "page.css"
)

// workers are the scripts that run beside the pages, by the name they are loaded by.
var workers = map[string]string{
	"worker.js": "workers/engine.ts",
	"sw.js":     "workers/offline.ts",
}

// bundle makes one script and one style sheet a page, and one script a worker, of the
// sources that these import. It gives them by name: survey.js, survey.css, worker.js.
// Nothing is read but the sources: what they import and what is not among them is an
// error that names the importing file.
func bundle(sources map[string][]byte) (map[string][]byte, error) {
	made := map[string][]byte{}
	one := func(name, entry string, format api.Format) error {
		result := api.Build(api.BuildOptions{
			EntryPoints:       []string{entry},
			Bundle:            true,
			Format:            format,
			Target:            api.ES2022,
			Charset:           api.CharsetUTF8,
			MinifyWhitespace:  true,
			MinifySyntax:      true,
			MinifyIdentifiers: true,
			LegalComments:     api.LegalCommentsInline,
			Plugins:           []api.Plugin{fromSources(sources)},
		})
		if len(result.Errors) > 0 {
			return errors.New(strings.TrimSpace(strings.Join(api.FormatMessages(result.Errors, api.FormatMessagesOptions{}), "\n")))
		}
		made[name] = result.OutputFiles[0].Contents
		return nil
	}
	var faults []error
	for source := range sources {
		folder, file := path.Split(source)
		switch name := strings.TrimSuffix(folder, "/"); file {
		case scriptSource:
			faults = append(faults, one(name+".js", source, api.FormatESModule))
		case styleSource:
			faults = append(faults, one(name+".css", source, api.FormatDefault))
		}
	}
	for name, source := range workers {
		faults = append(faults, one(name, source, api.FormatIIFE))
	}
	return made, errors.Join(faults...)
}

// fromSources has the bundler read the sources in memory and no disk.
func fromSources(sources map[string][]byte) api.Plugin {
	const namespace = "pages"
	resolve := func(args api.OnResolveArgs) (api.OnResolveResult, error) {
		name := args.Path
		if args.Kind != api.ResolveEntryPoint {
			name = path.Join(path.Dir(args.Importer), args.Path)
		}
		if _, there := sources[name]; !there {
			return api.OnResolveResult{}, fmt.Errorf("pages/%s: expected an imported file that exists, found %q", args.Importer, args.Path)
		}
		// Every style sheet lies at the top of the build, so that is where addresses in it begin.
		if args.Kind == api.ResolveCSSURLToken {
			return api.OnResolveResult{Path: name, External: true}, nil
		}
		return api.OnResolveResult{Path: name, Namespace: namespace}, nil
	}
	loaders := map[string]api.Loader{".ts": api.LoaderTS, ".js": api.LoaderJS, ".css": api.LoaderCSS}
	load := func(args api.OnLoadArgs) (api.OnLoadResult, error) {
		text := string(sources[args.Path])
		return api.OnLoadResult{Contents: &text, Loader: loaders[path.Ext(args.Path)]}, nil
	}
	return api.Plugin{Name: namespace, Setup: func(b api.PluginBuild) {
		b.OnResolve(api.OnResolveOptions{Filter: ".*"}, resolve)
		b.OnLoad(api.OnLoadOptions{Filter: ".*", Namespace: namespace}, load)
	}}
}

// assemble gives everything that a folder has of the pages: pages, scripts and style
// sheets made of the sources, and drawings, samples, type faces and the icon as they are.
func assemble(sources map[string][]byte) (map[string][]byte, error) {
	parts, err := layOut(sources)
	if err != nil {
		return nil, err
	}
	scripts, err := bundle(sources)
	if err != nil {
		return nil, err
	}
	for name, data := range scripts {
		parts[name] = data
	}
	for name, data := range sources {
		if slices.Contains([]string{".json", ".svg", ".woff2"}, path.Ext(name)) {
			parts[name] = data
		}
	}
	return parts, nil
}
