package main

import (
	"encoding/csv"
	"io"
	"strconv"

	"hoopwright/layout/arch"
	"hoopwright/layout/measure"
)

// csv prints the sizes as RFC 4180 has it, with CRLF and a head of names that say their units. What an arch that is none does not have is empty.
func (c choice) csv(w io.Writer) error {
	u := c.spec.Units
	length, force := measure.By(u, "_in", "_mm"), measure.By(u, "_lbf", "_n")
	head := []string{"span" + length, "crown" + length, "clear" + length, "head_width" + length, "opening_clears", "bend_radius" + length, "strain_percent", "bend",
		"thrust" + force, "load_factor", "load_factor_way", "stands", "buildable", "stake_bar_bends"}
	for _, f := range c.kind.Footings {
		head = append(head, "stake_depth_"+f.Soil.Name+length)
	}
	var bought []string
	if len(c.goods) > 0 {
		sticks, strings, money, priced := sums(c.goods)
		head = append(head, "sticks_to_buy", "strings_to_buy", "money"+currencyEnd(c.spec.Currency))
		bought = []string{strconv.Itoa(sticks), strconv.Itoa(strings), ""}
		if priced {
			bought[2] = strconv.FormatFloat(money, 'f', 2, 64)
		}
	}
	t := csv.NewWriter(w)
	t.UseCRLF = true
	if err := t.Write(head); err != nil {
		return err
	}
	for _, s := range c.sizes {
		row := []string{lengthCell(s.Span, u)}
		if s.Standing == arch.NoArch {
			row = append(row, make([]string, 10)...)
			row = append(row, s.Standing.String(), "false", "")
			row = append(row, make([]string, len(c.kind.Footings))...)
		} else {
			factor, way := s.LoadFactor()
			push := float64(s.Thrust)
			if u == measure.Imperial {
				push = float64(s.Thrust / measure.PoundForce)
			}
			row = append(row, lengthCell(s.Crown, u), lengthCell(s.Clear, u), lengthCell(s.HeadWidth, u), strconv.FormatBool(s.Opens), lengthCell(s.BendRadius, u),
				decimals(s.Strain*100, 3), s.Bend.String(), decimals(push, 2), decimals(factor, 2), way, s.Standing.String(), strconv.FormatBool(s.Buildable()), strconv.FormatBool(s.StakeBends))
			for _, f := range s.Footings {
				row = append(row, lengthCell(f.Depth, u))
			}
		}
		if err := t.Write(append(row, bought...)); err != nil {
			return err
		}
	}
	t.Flush()
	return t.Error()
}

// currencyEnd is the end of a head that names a currency.
func currencyEnd(currency string) string {
	if currency == "" {
		return ""
	}
	return "_" + currency
}

// lengthCell is a length in inches or millimetres as a plain number.
func lengthCell(l measure.Length, u measure.System) string {
	return measure.By(u, decimals(l.Inches(), 3), decimals(float64(l), 1))
}

func decimals(v float64, places int) string { return strconv.FormatFloat(v, 'f', places, 64) }
