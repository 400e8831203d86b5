namespace CalibGeom.Fuzz;

/// <summary>
/// Whole command lines over files of the corpus. <c>{x}</c> stands for a file that is changed, <c>{out}</c> for a
/// folder to write to.
/// </summary>
internal static class FuzzedCommands
{
    internal static IReadOnlyList<string> All { get; } =
    [
        "make --object {witness.spec.json} --check",
        "make --object {witness.spec.json} --set tilt.angle=4 -o {out}/a.stl --picture {out}/a.svg",
        "make --object {witness.object.json} --mark 2 -o {out}/a.3mf --json",
        "make --object witness --sweep columns.height=5,6.3 --shard 1/2 -o {out}/a-{n}.obj",
        "draw --object {witness.spec.json} --paper letter -o {out}/a.svg",
        "presets witness --json",
        "start --maker-time 2.5 --layer 0.05 --json",
        "simulate --object {witness.spec.json} --dp 0.12 --ec 4 --irradiance 4 --blur 0.02 --time 2.5 --seed 1 -o {out}/p.csv",
        "readings --object {witness.object.json} -o {out}/r.csv",
        "readings --object {witness.object.json} --sheet {out}/r.html --json",
        "predict {bench.readings.csv} --object standard --for 20/20.2 --limits 0.02/0.07",
        "predict {bench.readings.json} --object standard --json",
        "predict --reading box1.outside.x=8.03 --reading box2.inside.x=8.06",
        "log add {bench.readings.csv} --to {demo.log.jsonl} --time 2.5 --rest 0.5 --resin x --printer y --again --yes",
        "log add {bench.readings.json} --to {out}/new.jsonl --time 2.5 --rest 0.5 --object {witness.object.json} --json",
        "log show {demo.log.jsonl} --json",
        "log undo {demo.log.jsonl}",
        "tune {demo.log.jsonl} --target 0.05 --plot {out}/t.svg --report {out}/t.html --card {out}/t.pdf",
        "trend {demo.log.jsonl} --plot {out}/t.svg --report {out}/t.html --tolerance 0.012",
        "map {plate.log.jsonl} --plate 150x90 --plot {out}/m.svg --for 20/20.2 --at 40,20",
        "caliper add {cal.caliper.csv} 10.01 10.01 10.02 --jaw outside --gauge 10",
        "caliper show {cal.caliper.csv} --json",
        "inspect {box.ascii.stl} --layer 0.05 --pixel 0.04 --plate 150x90x160",
        "inspect {box.obj} --lenient --json",
        "place {box.ascii.stl} --plate 150x90 --gap 2 --picture {out}/p.svg -o {out}/p.stl",
        "place {box.obj} --lenient --plate 90x60 --at map --count 2 -o {out}/p.3mf",
        "completions bash",
        "help make",
    ];
}
