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
	underFloorAccess = Source{
		Document: irc, Clause: "R408.4", Printed: "18 inches by 24 inches (457 mm by 610 mm)", Status: FromMemory,
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
	pullPoints = Source{
		Document: "ANSI/TIA-569", Clause: "pathways of conduit", Printed: "two 90° bends, 30 m (100 ft)",
		AsQuotedBy: "a forum of cabling designers", Status: Derived,
	}
	heatLoss = Source{
		Document: "ANSI/TIA-568-C.2", Clause: "6.4.7", Printed: "0.4 % per °C from 20 to 40 °C, 0.6 % from 40 to 60 °C",
		AsQuotedBy: "a message to a mailing list of IEEE 802.3", Status: AsQuoted,
	}
	limitedUse = Source{
		Document: nec, Clause: "800.113 and Table 800.154", Printed: "less than 6 mm (0.25 in)",
		AsQuotedBy: "a note of 1987 on Article 800 and a page of flame ratings", Status: AsQuoted,
	}
	joistHoles = Source{
		Document: irc, Clause: "R502.8.1, R802.7.1", Printed: "one-third of the depth; 2 in (51 mm)",
		AsQuotedBy: "an inspector's page and an examination guide", Status: AsQuoted,
	}
	bending = Source{
		Document: "ANSI/TIA-568.0", Clause: "5.3", Printed: "4 times the diameter; 110 N (25 lbf)",
		AsQuotedBy: "two installation guides", Status: AsQuoted,
	}
	partSheets  = Source{Document: "makers' data sheets of plugs and jacks, brands withheld", Status: Confirmed}
	powerOnData = Source{
		Document: "IEEE Std 802.3bt-2018", Clause: "classes",
		AsQuotedBy: "a published class table and a switch manual", Status: AsQuoted,
	}
)
