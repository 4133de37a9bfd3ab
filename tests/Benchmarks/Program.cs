using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Diagnosers;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using FleetWake.Benchmarks;
using FleetWake.Benchmarks.Digests;
using FleetWake.Benchmarks.Drift;
using FleetWake.Benchmarks.Oracle;
using FleetWake.Benchmarks.Pages;
using FleetWake.Benchmarks.Pictures;

if (args is ["side-by-side", .. var rest])
{
    var python = rest.Length > 0 ? rest[0] : null;
    var balance = await SideBySide.RunAsync(python, Console.Out);
    return Math.Max(balance, await NumpyDrift.RunAsync(python, Console.Out));
}

if (args is ["growth"])
    return await Growth.RunAsync(Console.Out);
if (args is ["pages"])
    return await PageTimes.RunAsync(Console.Out);
if (args is ["pictures", .. var pythons])
    return await PictureTimes.RunAsync(pythons.Length > 0 ? pythons[0] : null, Console.Out);
if (args is ["digest"])
    return await DigestTimes.RunAsync(Console.Out);
if (args is ["oracle"])
    return await Oracle.RunAsync(Console.Out);

// In this process: a project made at run time would fall under the house's build rules, which it does not keep.
var config = DefaultConfig.Instance
    .AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance))
    .AddDiagnoser(MemoryDiagnoser.Default);
BenchmarkSwitcher.FromAssembly(typeof(SideBySide).Assembly).Run(args, config);
return 0;
