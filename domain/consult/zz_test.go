package consult
import ("testing";"os";"fmt";"handbreadth/domain")
func TestZZ(t *testing.T){ d,_:=os.ReadFile("/tmp/ex.json"); in,err:=Parse(d); if err!=nil{t.Fatal(err)}
p,err:=domain.NewPlan(in); if err!=nil{t.Fatal(err)}
b,err:=Encode(p); fmt.Println(string(b[:min(len(b),6000)]),err, p.Gate)
for _,bad:=range []string{`{"date":1,"date":"x","foo\n":null,"client":{"name":" ","age":3},"height":168,"weight":"168","goal":{"kind":"loose","by":"2020-01-01","kcal_per_day":"1500"},"activity":{},"avoid":["peanut","x",3],"screening":{"lithium":"yes","zz":true},"hold_reasons":{"warfarin":"a","lithium":3},"meals_per_day":2.5,"pal":null} x`, `{"a":1`, ``, `[]`, `{"a":1,}`, "{\"client\":{\"name\":\"\xff\"}}", `{"client":{"name":"\ud800"}}`}{ _,err:=Parse([]byte(bad)); fmt.Println("----",bad); fmt.Println(err)}
}
