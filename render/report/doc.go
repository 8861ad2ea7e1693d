// Package report writes results as text and as JSON.
//
// A *route.Result comes in; text for people or JSON for programs goes out, the
// same bytes for the same result. The package decides nothing and draws
// nothing.
package report
