package report_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"fieldfare/convert/report"
	"fieldfare/dwc"
	"fieldfare/testdata/need"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// example is a report with something in every part of it, long words and
// markup among them.
func example() *report.Report {
	var s report.Season
	long := "Pseudoterpnaabsolutelyoverlongwithoutanyspacesinthename longissimaandlongerstill"
	for i := range 400 {
		y, m, d := 2019+i%5, 3+i%8, 1+i%28
		o := dwc.Occurrence{
			ScientificName: []string{"Noctua pronuba", "Agrotis exclamationis", long, "Laothoe populi"}[i%4], Locality: "Sallowmere Reserve",
			EventDate: fmt.Sprintf("%d-%02d-%02d", y, m, d), Year: fmt.Sprint(y), IndividualCount: "3", OccurrenceStatus: "present",
			DecimalLatitude: fmt.Sprint(52.4 + float64(i%20)*0.01), DecimalLongitude: fmt.Sprint(0.1 + float64(i%30)*0.01), CoordinateUncertainty: "71",
		}
		r := report.SightingOf(&o, i%50 == 0, i%90 == 0)
		s.Add(&r)
	}
	o := dwc.Occurrence{ScientificName: "Calliteara pudibunda", VernacularName: "<script>alert(1)</script>", Locality: "Sallowmere Reserve", EventDate: "2023-06-01", Year: "2023", OccurrenceStatus: "present"}
	r := report.SightingOf(&o, false, false)
	s.Add(&r)
	check := report.CheckCount{Check: "no-such-day", About: "date", State: "held", Records: 9}
	return &report.Report{
		Title: "Moths of Sallowmere Reserve & Tinker's Row", Season: &s, Questions: 3,
		Summary: &report.Summary{
			Counts: report.Counts{Read: 420, Fair: 400, Query: 1, Held: 9, Skipped: 10}, Occurrences: 401, Events: 40,
			Versions: []report.ListVersion{{Name: "fieldfare", Version: "sha256:" + strings.Repeat("0123456789abcdef", 4)}},
			Dataset:  report.DatasetSummary{Missing: []string{"a citation"}},
		},
		Checks: []report.FiredCheck{{CheckCount: check, Examples: []report.Example{{Message: "The calendar has no 31 June.", Where: "a very long name of a notebook of many years.xlsx / Sheet / B7"}}}},
		Sheets: []report.SheetShown{{File: "walks.csv", ReadAs: "list", Text: "A Date: date\nB " + strings.Repeat("x", 300)}},
	}
}

// picture keeps a picture of the page, where somebody wants to look at it.
func picture(t *testing.T, ctx context.Context, name string) {
	folder := os.Getenv("FIELDFARE_SCREENSHOTS")
	if folder == "" {
		return
	}
	var png []byte
	require.NoError(t, chromedp.Run(ctx, chromedp.FullScreenshot(&png, 100)))
	require.NoError(t, os.WriteFile(filepath.Join(folder, "report-"+name+".png"), png, 0o644))
}

// contrast lists the texts whose colour is too near to that behind them, by the
// formula of WCAG 2.2 (relative luminance).
const contrast = `(() => {
	const out = [];
	const colour = s => { const m = s.match(/[\d.]+/g).map(Number); return m.length > 3 && m[3] === 0 ? null : m; };
	const light = ([r, g, b]) => { const f = v => { v /= 255; return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; }; return 0.2126 * f(r) + 0.7152 * f(g) + 0.0722 * f(b); };
	const behind = e => { for (; e; e = e.parentElement) { const c = colour(getComputedStyle(e).backgroundColor); if (c) return c; } return [255, 255, 255]; };
	for (const e of document.querySelectorAll("body *")) {
		if (![...e.childNodes].some(n => n.nodeType === 3 && n.textContent.trim()) || e.closest(".halo, title, style")) continue;
		const style = getComputedStyle(e), inPicture = e.closest("svg");
		const a = light(colour(inPicture ? style.fill : style.color)), b = light(behind(e));
		const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
		if (ratio < 4.5) out.push(ratio.toFixed(1) + " " + e.tagName + " " + e.textContent.slice(0, 30));
	}
	return out.slice(0, 10);
})()`

func TestReportInABrowser(t *testing.T) {
	browser := need.Tool(t, "chromium", "apt-get install chromium")
	path := filepath.Join(t.TempDir(), "report.html")
	file, err := os.Create(path)
	require.NoError(t, err)
	require.NoError(t, example().Write(file))
	require.NoError(t, file.Close())

	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(browser), chromedp.NoSandbox, chromedp.WSURLReadTimeout(time.Minute))
	allocator, cancel := chromedp.NewExecAllocator(context.Background(), options...)
	defer cancel()
	ctx, cancel := chromedp.NewContext(allocator)
	defer cancel()
	ctx, cancel = context.WithTimeout(ctx, 3*time.Minute)
	defer cancel()

	var mutex sync.Mutex
	var complaints, requests []string
	chromedp.ListenTarget(ctx, func(event any) {
		mutex.Lock()
		defer mutex.Unlock()
		switch e := event.(type) {
		case *runtime.EventConsoleAPICalled:
			complaints = append(complaints, string(e.Type))
		case *runtime.EventExceptionThrown:
			complaints = append(complaints, e.ExceptionDetails.Text)
		case *log.EventEntryAdded:
			complaints = append(complaints, e.Entry.Text)
		case *network.EventRequestWillBeSent:
			requests = append(requests, e.Request.URL)
		}
	})
	page := "file://" + filepath.ToSlash(path)
	require.NoError(t, chromedp.Run(ctx, network.Enable(), log.Enable(), chromedp.Navigate(page)))

	for _, width := range []int64{360, 1280} {
		var wide []string
		require.NoError(t, chromedp.Run(ctx,
			emulation.SetDeviceMetricsOverride(width, 800, 1, width < 500),
			chromedp.Evaluate(`document.querySelectorAll("details").forEach(d => d.open = true)`, nil),
			chromedp.Evaluate(`(() => {
				const out = [], w = document.documentElement.clientWidth;
				if (document.documentElement.scrollWidth > w) out.push("the page: " + document.documentElement.scrollWidth);
				for (const e of document.querySelectorAll("body *")) {
					if (e.closest(".wide, svg, .hear, caption")) continue; // .wide scrolls by itself
					if (e.getBoundingClientRect().right > w + 1) out.push(e.tagName + ": " + e.textContent.slice(0, 40));
				}
				for (const s of document.querySelectorAll("svg")) {
					const box = s.viewBox.baseVal;
					for (const e of s.querySelectorAll("text")) {
						const b = e.getBBox();
						if (b.x < -0.5 || b.x + b.width > box.width + 0.5 || b.y + b.height > box.height + 0.5) out.push("in a picture: " + e.textContent);
					}
				}
				return out;
			})()`, &wide)))
		assert.Empty(t, wide, "what runs over at a width of %d", width)
		picture(t, ctx, fmt.Sprint(width))
	}

	// Text stands out from what is behind it: 4.5 to 1 (WCAG 2.2, 1.4.3), in
	// light and dark and where people choose the colours themselves.
	for _, scheme := range []struct{ name, feature, value string }{{"light", "prefers-color-scheme", "light"}, {"dark", "prefers-color-scheme", "dark"}, {"forced", "forced-colors", "active"}} {
		var pale []string
		require.NoError(t, chromedp.Run(ctx,
			emulation.SetEmulatedMedia().WithFeatures([]*emulation.MediaFeature{{Name: "forced-colors", Value: "none"}, {Name: scheme.feature, Value: scheme.value}}),
			chromedp.Evaluate(contrast, &pale)))
		assert.Empty(t, pale, "hard to read in %s colours", scheme.name)
		picture(t, ctx, scheme.name)
	}
	require.NoError(t, chromedp.Run(ctx, emulation.SetEmulatedMedia()))

	// The keyboard reaches every link, summary and scrolling table.
	var reachable, reached int
	require.NoError(t, chromedp.Run(ctx,
		chromedp.Evaluate(`window.all = new Set(document.querySelectorAll("a[href], summary, [tabindex='0']")); window.all.size`, &reachable),
		chromedp.Evaluate(`document.activeElement.blur(); window.scrollTo(0, 0)`, nil)))
	for range reachable + 2 {
		require.NoError(t, chromedp.Run(ctx, chromedp.KeyEvent(kb.Tab), chromedp.Evaluate(`window.all.delete(document.activeElement); window.all.size`, &reached)))
		if reached == 0 {
			break
		}
	}
	assert.Positive(t, reachable)
	assert.Zero(t, reached, "of %d elements so many cannot be reached", reachable)

	// Everything has a name, the headings do not skip a level, and links lead
	// somewhere (rules of WCAG 2.2: 1.1.1, 1.3.1, 2.4.1).
	var faults []string
	require.NoError(t, chromedp.Run(ctx, chromedp.Evaluate(`(() => {
		const out = [];
		for (const s of document.querySelectorAll("svg")) if (!s.getAttribute("aria-label")) out.push("a picture without text");
		for (const s of document.querySelectorAll("table")) if (!s.caption || !s.querySelector("th[scope]")) out.push("a table without caption or headings");
		let level = 0;
		for (const h of document.querySelectorAll("h1, h2, h3, h4")) { const n = +h.tagName[1]; if (n > level + 1) out.push("heading skips: " + h.textContent); level = n; }
		for (const a of document.querySelectorAll("a[href^='#']")) if (!document.querySelector(a.getAttribute("href"))) out.push("leads nowhere: " + a.textContent);
		return out;
	})()`, &faults)))
	assert.Empty(t, faults)

	mutex.Lock()
	defer mutex.Unlock()
	assert.Empty(t, complaints)
	assert.Equal(t, []string{page}, requests, "the page itself and nothing else")
}
