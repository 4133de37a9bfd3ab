using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Diagnosers;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using FleetWake.Benchmarks;
using FleetWake.Benchmarks.Oracle;

if (args is ["side-by-side", .. var rest])
    return await SideBySide.RunAsync(rest.Length > 0 ? rest[0] : null, Console.Out);

if (args is ["oracle"])
    return await Oracle.RunAsync(Console.Out);

// In this process: a project made at run time would fall under the house's build rules, which it does not keep.
var config = DefaultConfig.Instance
    .AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance))
    .AddDiagnoser(MemoryDiagnoser.Default);
BenchmarkSwitcher.FromAssembly(typeof(SideBySide).Assembly).Run(args, config);
return 0;
