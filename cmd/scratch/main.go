package main

import (
	"fmt"
	"os"
	"time"

	"topplate/plan"
	"topplate/plan/source"
	"topplate/render/report"
	"topplate/route"
)

func main() {
	job, l := plan.LoadJob(os.Args[1], source.ReadFile)
	l.Print(os.Stderr, nil)
	if l.HasErrors() {
		os.Exit(2)
	}
	t := time.Now()
	res, err := route.Solve(job)
	if err != nil {
		panic(err)
	}
	fmt.Fprintln(os.Stderr, time.Since(t), len(res.Graph.Nodes), len(res.Graph.Arcs))
	if len(os.Args) > 2 {
		report.JSON(os.Stdout, res)
		return
	}
	report.Schedule(os.Stdout, res)
}
