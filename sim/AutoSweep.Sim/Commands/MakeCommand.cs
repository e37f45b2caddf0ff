using System.CommandLine;
using AutoSweep.Core.Generator;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Making;

namespace AutoSweep.Sim.Commands;

/// <summary><c>autosweep-sim make</c>: a bench file and its calibration sheet from a generator profile.</summary>
internal static class MakeCommand
{
    public static Command Create()
    {
        var profile = new Option<string>("--profile") { Description = "A shipped profile's name or a profile file.", Required = true };
        var name = new Option<string>("--name") { Description = "The bench's name.", Required = true };
        var seed = new Option<int>("--seed") { Description = "The same seed makes the same bench.", Required = true };
        var output = new Option<string>("--out") { Description = "The bench file to write.", Required = true };
        var about = new Option<string?>("--about") { Description = "A sentence on what the bench is for." };
        var gain = new Option<double>("--gain")
        {
            Description = "Gain of the front-end amplifier; 1 is none.",
            DefaultValueFactory = _ => 20,
        };
        var spread = new Option<double>("--spread")
        {
            Description = "How far peaks may lie off the profile's capacitance, in per cent.",
            DefaultValueFactory = _ => 30,
        };
        var coupled = new Option<int>("--coupled") { Description = "Outputs that get the coupled arrangement." };
        var tapped = new Option<int>("--tapped") { Description = "Outputs that get the tapped arrangement." };
        var trouble = new Option<bool>("--trouble") { Description = "Plant faults, and let the hands go wrong now and then." };
        var parts = new Option<int>("--parts") { Description = "How many capacitors lie in the shop's drawers." };
        var command = new Command("make", "Makes a bench file from a generator profile.")
        {
            profile, name, seed, output, about, gain, spread, coupled, tapped, trouble, parts,
        };
        command.SetAction(parsed =>
        {
            var order = new BenchOrder
            {
                Name = parsed.GetRequiredValue(name),
                Profile = parsed.GetRequiredValue(profile),
                Seed = parsed.GetRequiredValue(seed),
                Gain = parsed.GetValue(gain),
                SpreadPercent = parsed.GetValue(spread),
                Coupled = parsed.GetValue(coupled),
                Tapped = parsed.GetValue(tapped),
                Trouble = parsed.GetValue(trouble),
                Parts = parsed.GetValue(parts),
            };
            Write(parsed.GetValue(about) is { } text ? order with { About = text } : order, parsed.GetRequiredValue(output));
        });
        return command;
    }

    private static void Write(BenchOrder order, string path)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        var profile = GeneratorProfileFile.Read(BenchLocator.Profile(order.Profile, folder));
        var (bench, calibration) = new BenchMaker(order, profile).Make();
        File.WriteAllText(path, BenchFile.Text(bench));
        File.WriteAllText(BenchFile.CalibrationPath(path), BenchFile.Text(calibration));
    }
}
