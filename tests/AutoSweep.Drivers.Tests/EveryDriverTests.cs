using AutoSweep.Drivers.Tests.Support;
using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Meters.Kit;
using AutoSweep.Instruments.Meters.Sessions;

namespace AutoSweep.Drivers.Tests;

/// <summary>What every driver folder must hold; there is no code for a single one.</summary>
public sealed class EveryDriverTests
{
    [Fact]
    public void Every_folder_in_the_repository_is_found() => Assert.Equal(
        Directory.EnumerateFiles(DriverFolders.InRepository("drivers"), DriverLibrary.FileName, SearchOption.AllDirectories)
            .Select(file => Path.GetFileName(Path.GetDirectoryName(file))).Order(StringComparer.Ordinal),
        DriverLibrary.BesideProgram.Names);

    [Theory]
    [MemberData(nameof(DriverFolders.Names), MemberType = typeof(DriverFolders))]
    public async Task The_check_without_hardware_finds_nothing(string driver)
    {
        var items = await DriverFolderCheck.CheckAsync(DriverFolders.Read(driver));
        Assert.Empty(items.SelectMany(item => item.Faults).Select(fault => $"{fault.Found} | expected {fault.Expected} | {fault.WhatToDo}"));
        Assert.Equal(["driver.json", "sessions", "commands.txt", "README.md", "lines"], items.Select(item => item.Name));
    }

    [Theory]
    [MemberData(nameof(DriverFolders.Sessions), MemberType = typeof(DriverFolders))]
    public Task A_session_replays_line_for_line(string driver, string session) =>
        SessionReplay.PlayAsync(DriverFolders.Session(driver, session), DriverLibrary.BesideProgram.Read(driver));

    [Fact]
    public void The_schema_in_the_folder_is_the_one_that_the_types_make()
    {
        var file = DriverFolders.InRepository("drivers/driver.schema.json");
        var made = Path.Combine(AppContext.BaseDirectory, "driver.schema.json");
        File.WriteAllText(made, DriverSchema.Text);
        Assert.True(
            File.Exists(file) && File.ReadAllText(file) == DriverSchema.Text, $"The schema changed; if that is meant: cp {made} {file}");
    }
}
