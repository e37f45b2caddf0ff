using AutoSweep.Core;
using AutoSweep.Instruments.Meters.Kit;
using AutoSweep.Instruments.Tests.Support;

namespace AutoSweep.Instruments.Tests.Meters.Kit;

/// <summary>A made-up driver is in order; one slip at a time, and the check names it with file, line and what to do.</summary>
public sealed class DriverFolderCheckTests : IDisposable
{
    private readonly MadeDriver _driver = new();

    public void Dispose() => _driver.Dispose();

    [Fact]
    public async Task A_folder_in_order_has_no_faults()
    {
        var items = await DriverFolderCheck.CheckAsync(DriverFolder.Read(_driver.Folder));
        Assert.Empty(items.SelectMany(item => item.Faults));
        Assert.Equal("lines", items[^1].Name);
    }

    public static TheoryData<string, string, string, string> Slips => new()
    {
        { "driver.json", "\"rangesVolts\": [0.1, 1, 10]", "\"rangesVolts\": [100, 1000, 10000]", "driver.json, line 14: level.rangesVolts: a lowest range of 100 V" },
        { "driver.json", "\"rangesVolts\": [0.1, 1, 10]", "\"rangesVolts\": [0.1, 1, 10000]", "level.rangesVolts: a range of 10000 V" },
        { "driver.json", "\"settleSeconds\": 1,", "\"settleSeconds\": 0.001,", "level.bandwidths[0].settleSeconds: 0.001 s" },
        { "driver.json", "\"fromToneHertz\": 100", "\"fromToneHertz\": 0.1", "level.bandwidths[0].fromToneHertz: 0.1 Hz" },
        { "driver.json", "RANG {range}", "RANG {range} MV", "level.setUp[0].command: the unit MV behind {range}" },
        { "driver.json", "\"*RST\"", "\"*RST {frequency}\"", "setUp[0].command: {frequency}, which nothing fills in here" },
        { "driver.json", "\"title\": \"a made-up meter\"", "\"title\": \"\"", "driver.json, line 4: title: an empty text" },
        { "driver.json", "VOLT:AC:BAND {bandwidth}", "VOLT:AC:BANDW {bandwidth}", "driver.json, line 12: level.setUp[1].command: \"VOLT:AC:BANDW {bandwidth}\" is no header of commands.txt" },
        { "driver.json", "VOLT:AC:BAND {bandwidth}", "VOLT:AC:BANDW {bandwidth}", "one.txt, line 23: the driver sends \"VOLT:AC:BANDW 20\"" },
        { "commands.txt", "READ?", "REA D?", "commands.txt, line 7: \"REA D?\"" },
        { "commands.txt", "# Source: made up", "#", "commands.txt names no source" },
        { "commands.txt", "READ?\n", "READ?\nFETCh?\n", "commands.txt, line 8: nothing in driver.json sends FETCh?" },
        { "README.md", "real unit", "one", "README.md has neither \"real unit\" nor \"real meter\"" },
        { "sessions/one.txt", "# Source: made up", "#", "one.txt names no source" },
        { "sessions/one.txt", "= overload", "= value 1", "one.txt, line 33: the driver makes \"overload\" of it" },
        { "sessions/one.txt", "= overload\n", "", "one.txt, line 33: the driver makes \"overload\" of it" },
        { "sessions/one.txt", "! prepare 0.02 523", "! prepare 0.02", "one.txt, line 18: the call \"prepare 0.02\"" },
        { "sessions/one.txt", "! read", "read", "one.txt, line 29: \"read\" is no line of a session" },
        { "sessions/one.txt", "> READ?\n< +5.0E-03", "> READ?", "one.txt, line 30: the driver waits for an answer to \"READ?\"" },
        { "sessions/one.txt", "> VOLT:AC:RANG 0.1", "> VOLT:AC:RANG 1", "one.txt, line 19: the driver sends \"VOLT:AC:RANG 0.1\"" },
        { "sessions/one.txt", "! close", "! close\n> SYST:LOC", "one.txt, line 40: the driver is done without this line" },
        { "sessions/one.txt", "! open", "! read", "one.txt, line 3: the call \"read\" while no meter is open" },
    };

    [Theory]
    [MemberData(nameof(Slips))]
    public async Task A_slip_is_named_with_its_place(string file, string right, string wrong, string named)
    {
        _driver.Change(file, right, wrong);
        var items = await DriverFolderCheck.CheckAsync(DriverFolder.Read(_driver.Folder));
        var faults = items.SelectMany(item => item.Faults).ToList();
        Assert.Contains(faults, fault => fault.Found.Contains(named, StringComparison.Ordinal));
        Assert.All(faults, fault => Assert.True(fault.Expected.Length > 0 && fault.WhatToDo.Length > 0));
    }

    [Fact]
    public async Task A_command_that_no_session_shows_is_named()
    {
        _driver.Change("driver.json", "\"serialSetUp\": []", "\"serialSetUp\": [{ \"command\": \"VOLT:AC:RANG 9\", \"required\": false }]");
        var items = await DriverFolderCheck.CheckAsync(DriverFolder.Read(_driver.Folder));
        var fault = Assert.Single(items.SelectMany(item => item.Faults));
        Assert.Contains("link.serialSetUp[0].command \"VOLT:AC:RANG 9\" can be deleted and nothing above minds", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_is_no_driver_is_named_and_nothing_else_is_checked()
    {
        _driver.Change("driver.json", "\"overRange\"", "\"overrange\"");
        var item = Assert.Single(await DriverFolderCheck.CheckAsync(DriverFolder.Read(_driver.Folder)));
        Assert.Contains("overRange", Assert.Single(item.Faults).WhatToDo, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_without_a_driver_is_a_fault() =>
        Assert.Equal(BenchFault.BadFile, Assert.Throws<BenchFaultException>(() => DriverFolder.Read(Path.GetDirectoryName(_driver.Folder)!)).Kind);
}
