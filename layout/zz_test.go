package layout_test
import ("testing";"os";"fmt";"strings";"hoopwright/layout";"hoopwright/layout/spec")
func TestZZ(t *testing.T){
 for _, f := range []string{"garden","starter","schoolyard","millwalk","parkwalk"} {
  src,_:=os.ReadFile("../examples/"+f+".yaml")
  if pl:=os.Getenv("PLACE"); pl!="" { src=[]byte(strings.Replace(string(src),"\nsite:\n","\nsite:\n  place: ["+pl+"]\n",1)) }
  sp,err:=spec.Read(f,src); if err!=nil {t.Fatal(err)}
  p:=layout.Solve(sp); s:=p.Crew.Schedule
  fmt.Printf("%s hands %d takes %.0f least %.0f idle %.2f fit %+v days %d jobs %d\n",f,s.Hands,s.Takes,s.Least,s.Idle,s.Fit,len(s.Built()),len(s.Jobs))
 }
}
