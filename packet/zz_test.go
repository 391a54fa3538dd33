package packet
import ("testing";"fmt";"hoopwright/draw/block")
func TestZZ(t *testing.T){
 for name, src := range specs(t) {
  s := newStakeLeafFor(t, name, src)
  if !s.byRow() {continue}
  for _, part := range s.parts[:1] {
  f, ok := s.arranged(part)
  body := s.body()
  fmt.Println("==", name, len(s.parts), ok, body.W, body.H, "back", block.Height(s.back(part, f), body.W), "tables behind", len(f.tables), "asides", len(f.asides), f.plan.Scale.Ratio, f.plan.Size(false).H)
  for _, b := range s.tables(part) { fmt.Printf("  table %s %.1f\n", b.Name, b.Body.Height(stakeAside)) }
  for _, b := range s.asides() { fmt.Printf("  aside %.1f right %.1f left\n", b.Body.Height(stakeAside), b.Body.Height(body.W-stakeAside-stakeGap)) }
  }
 }
}
