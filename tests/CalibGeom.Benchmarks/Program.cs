using BenchmarkDotNet.Running;
using CalibGeom.Benchmarks;

if (args is ["table", ..])
    PerformanceTable.Print(Console.Out);
else
    BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
