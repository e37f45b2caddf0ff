using AutoSweep.Core;
using AutoSweep.Instruments.Links;
using AutoSweep.Instruments.Links.Visa;
using AutoSweep.Instruments.Tests.Support;

namespace AutoSweep.Instruments.Tests.Links.Visa;

/// <summary>What is said when a resource cannot be opened, and which resources a library knows.</summary>
[Collection(VisaStandIn.Collection)]
public sealed class VisaOpeningTests : IDisposable
{
    private readonly VisaStandIn? _visa = VisaStandIn.CanBeBuilt ? new() : null;

    public void Dispose() => _visa?.Dispose();

    private VisaStandIn Visa => _visa!;

    [CompiledTheory]
    [InlineData(0xBFFF0011, "nothing answers at this name (VI_ERROR_RSRC_NFOUND)", "address")]
    [InlineData(0xBFFF0072, "another program has the instrument open (VI_ERROR_RSRC_BUSY)", "other program")]
    [InlineData(0xBFFF000F, "another program has locked the instrument (VI_ERROR_RSRC_LOCKED)", "other program")]
    [InlineData(0xBFFF0015, "no answer in time (VI_ERROR_TMO)", "is on")]
    [InlineData(0xBFFF009E, "lacks the part for this kind of interface (VI_ERROR_LIBRARY_NFOUND)", "Install")]
    [InlineData(0xBFFF00A5, "no interface has this number (VI_ERROR_INTF_NUM_NCONFIG)", "number")]
    [InlineData(0xBFFF00A8, "this user may not open it (VI_ERROR_NPERMISSION)", "right")]
    [InlineData(0xBFFF7777, "the stand-in's own words for BFFF7777 (0xBFFF7777)", "set-up program")]
    public async Task A_resource_that_does_not_open_says_why_and_what_to_do(uint status, string words, string whatToDo)
    {
        Visa.FailNext("viOpen", unchecked((int)status));
        var fault = await FaultAsync("GPIB::22::INSTR", Visa.Names);
        Assert.Equal(BenchFault.NotReachable, fault.Kind);
        Assert.Contains(words, fault.Found, StringComparison.Ordinal);
        Assert.Contains(whatToDo, fault.WhatToDo, StringComparison.OrdinalIgnoreCase);
    }

    [CompiledFact]
    public async Task A_name_that_the_library_does_not_know_is_shown()
    {
        var fault = await FaultAsync("visa:my-meter", Visa.Names);
        Assert.Contains("\"visa:my-meter\"", fault.Found, StringComparison.Ordinal);
        Assert.Contains("VI_ERROR_INV_RSRC_NAME", fault.Found, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("GPIB::9::INSTR")]
    [InlineData("TCPIP::host::INSTR")]
    [InlineData("TCPIP::host::hislip0::INSTR")]
    [InlineData("visa:TCPIP::host::5025::SOCKET")]
    public async Task Without_a_library_the_names_that_were_tried_are_told_and_what_to_use_instead(string resource)
    {
        var fault = await FaultAsync(resource, new(["libno-such-visa.so", "libnor-this.so.0"]));
        Assert.Equal(BenchFault.NotReachable, fault.Kind);
        Assert.Contains("libno-such-visa.so, libnor-this.so.0", fault.Found, StringComparison.Ordinal);
        Assert.Contains("SOCKET", fault.WhatToDo, StringComparison.Ordinal);
        Assert.Contains(VisaLibraryNames.Variable, fault.WhatToDo, StringComparison.Ordinal);
    }

    [CompiledFact]
    public void A_library_of_that_name_that_is_no_VISA_is_passed_over()
    {
        Assert.Null(VisaLibrary.Find(new(["libc.so.6"])));
        Assert.Equal(VisaStandIn.FileName, VisaLibrary.Find(new(["libc.so.6", VisaStandIn.FileName]))?.Name);
    }

    [Fact]
    public void Every_system_has_names_to_look_for()
    {
        Assert.NotEmpty(VisaLibraryNames.Usual.Names);
        Assert.All(VisaLibraryNames.Usual.Names, name => Assert.Contains("visa", name, StringComparison.OrdinalIgnoreCase));
    }

    [CompiledFact]
    public void The_resources_that_the_library_knows_are_listed()
    {
        Assert.Empty(VisaLibrary.Find(Visa.Names)!.Resources()); // VI_ERROR_RSRC_NFOUND is no fault here
        string[] names = ["GPIB0::22::INSTR", "USB0::0x1234::0x5678::A001::INSTR", "ASRL1::INSTR"];
        foreach (var name in names)
            Visa.Add(name, 1);
        Assert.Equal(names, VisaLibrary.Find(Visa.Names)!.Resources());
    }

    private static Task<BenchFaultException> FaultAsync(string resource, VisaLibraryNames names) =>
        Assert.ThrowsAsync<BenchFaultException>(async () =>
            await new LinkOpener(TimeProvider.System, names).OpenAsync(ResourceName.Parse(resource), new(new()), default));
}
