package rule

// Documents that several records come from.
const (
	irc = "International Residential Code"
	nec = "NFPA 70 (National Electrical Code)"
)

// Sources that several records share.
var (
	practice = Source{Status: CommonPractice}

	studHoles = Source{
		Document: irc, Edition: "2018", Clause: "R602.6 item 2",
		Printed: "40 % of width, 60 % non-bearing or doubled", Status: Confirmed,
	}
	plateHoles = Source{
		Document: irc, Edition: "2018", Clause: "R602.6.1",
		Printed: "more than 50 percent of its width", Status: Confirmed,
	}
	sealing = Source{
		Document: irc, Edition: "2024", Clause: "R302.11 item 4",
		AsQuotedBy: "a code consultant's column and a building inspectors' forum", Status: AsQuoted,
	}
	atticAccess = Source{
		Document: irc, Clause: "R807.1", Printed: "22 in by 30 in (559 mm by 762 mm)",
		AsQuotedBy: "a building inspectors' forum", Status: AsQuoted,
	}
	powerSeparation = Source{
		Document: nec, Edition: "2017", Clause: "800.133(A)(2); since 2020 805.133(A)(2); 725.136(I) for Class 2",
		Printed: "50 mm (2 in)", AsQuotedBy: "a cabling help desk and a cable maker's page, brand withheld", Status: AsQuoted,
	}
	boredHoles = Source{
		Document: nec, Clause: "300.4(A)(1)", Printed: "32 mm (1-1/4 in)",
		AsQuotedBy: "an electrical trade magazine", Status: AsQuoted,
	}
	permanentLink = Source{
		Document: "ANSI/TIA-568.2-D", Clause: "permanent link", Printed: "90 m (295 ft)",
		AsQuotedBy: "cable makers' pages, brands withheld", Status: AsQuoted,
	}
	leadRule = Source{
		Document: "40 CFR 745", Clause: "745.83", Printed: "6 square feet per room inside, 20 outside",
		AsQuotedBy: "two training pages", Status: AsQuoted,
	}
)
