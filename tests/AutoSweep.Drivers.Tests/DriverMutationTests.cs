using AutoSweep.Drivers.Tests.Support;
using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Meters.Kit;
using Xunit.Abstractions;

namespace AutoSweep.Drivers.Tests;

/// <summary>Every command of every driver deleted in turn: some part of the check must mind.</summary>
public sealed class DriverMutationTests(ITestOutputHelper output)
{
    [Fact]
    public async Task No_command_of_any_driver_can_be_deleted_unnoticed()
    {
        output.WriteLine($"{"driver",-20}{"commands",10}{"mutants",10}{"killed",10}{"survivors",10}");
        List<string> survivors = [];
        foreach (var name in DriverLibrary.BesideProgram.Names)
        {
            var mutants = await DriverMutant.RunAsync(DriverFolders.Read(name));
            var alive = mutants.Where(mutant => mutant.MindedBy is null).Select(mutant => $"{name}: {mutant.Line}").ToList();
            output.WriteLine($"{name,-20}{mutants.Count(IsInDriverFile),10}{mutants.Count,10}{mutants.Count - alive.Count,10}{alive.Count,10}");
            survivors.AddRange(alive);
        }

        Assert.Empty(survivors);
    }

    /// <summary>That a list of headers minds would only say that two lists agree; the words on the wire must mind.</summary>
    [Theory]
    [MemberData(nameof(DriverFolders.Names), MemberType = typeof(DriverFolders))]
    public async Task A_command_deleted_from_the_driver_file_is_missed_on_the_wire_or_by_the_schema(string driver) => Assert.All(
        (await DriverMutant.RunAsync(DriverFolders.Read(driver))).Where(IsInDriverFile),
        mutant => Assert.True(mutant.MindedBy is DriverFolder.SessionsName or DriverLibrary.FileName, mutant.Line));

    private static bool IsInDriverFile(DriverMutant mutant) => mutant.Line.StartsWith(DriverLibrary.FileName, StringComparison.Ordinal);
}
