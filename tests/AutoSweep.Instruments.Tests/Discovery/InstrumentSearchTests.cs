using AutoSweep.Instruments.Discovery;
using AutoSweep.Instruments.Links;
using AutoSweep.Instruments.Tests.Support;

namespace AutoSweep.Instruments.Tests.Discovery;

[Collection(VisaStandIn.Collection)]
public sealed class InstrumentSearchTests : IDisposable
{
    private readonly VisaStandIn? _visa = VisaStandIn.CanBeBuilt ? new() : null;
    private readonly UsbTree _tree = new();

    public void Dispose()
    {
        _visa?.Dispose();
        _tree.Dispose();
    }

    [CompiledFact]
    public async Task Everything_is_listed_once_under_a_name_that_opens_it()
    {
        _tree.Plug(0, "1234", "00a8", "A22-5");
        foreach (var name in (string[])["USB0::0x1234::0x00A8::A22-5::0::INSTR", "USB0::0x1234::0x00A8::other::INSTR", "ASRL1::INSTR", "GPIB0::22::INSTR", "PXI0::3::INSTR"])
            _visa!.Add(name, 1);
        var found = await Search(_visa!.Names, "/dev/ttyS0").FindAsync(default);
        Assert.Equal(
        [
            "USB::0x1234::0x00A8::A22-5::INSTR", // the kernel's, and so not the library's
            "ASRL/dev/ttyS0::INSTR", // our own, and so not the library's
            "USB0::0x1234::0x00A8::other::INSTR",
            "GPIB0::22::INSTR",
            "visa:PXI0::3::INSTR", // a kind that only the library knows
        ], found.Resources.Select(resource => resource.Resource));
        Assert.All(found.Resources, resource => ResourceName.Parse(resource.Resource));
        Assert.Empty(found.Notes);
    }

    [CompiledFact]
    public async Task Nothing_is_opened_or_sent()
    {
        _visa!.Add("GPIB0::22::INSTR", 1);
        await Search(_visa.Names).FindAsync(default);
        Assert.Equal((0, 0), (_visa.Calls("viOpen"), _visa.Calls("viWrite")));
    }

    [Fact]
    public async Task Without_a_VISA_library_a_note_says_so_and_the_rest_is_listed()
    {
        var found = await Search(new(["libno-such-visa.so"]), "COM3").FindAsync(default);
        Assert.Equal([new("ASRL3::INSTR", "serial port COM3")], found.Resources);
        Assert.Contains("libno-such-visa.so", Assert.Single(found.Notes), StringComparison.Ordinal);
    }

    [CompiledFact]
    public async Task A_VISA_library_that_fails_is_a_note_with_its_reason()
    {
        _visa!.FailNext("viFindRsrc", unchecked((int)0xBFFF0000));
        var found = await Search(_visa.Names).FindAsync(default);
        Assert.Contains("VI_ERROR_SYSTEM_ERROR", Assert.Single(found.Notes), StringComparison.Ordinal);
    }

    // udev's links: /lib/udev/rules.d/60-serial.rules.
    [PtyFact]
    public void A_serial_port_is_named_so_that_it_is_found_again_in_any_socket()
    {
        Directory.CreateDirectory(_tree.At("by-id"));
        File.WriteAllText(_tree.At("ttyUSB1"), "");
        File.CreateSymbolicLink(_tree.At("by-id/usb-Invented_box-if00"), "../ttyUSB1");
        var ports = new SerialPortList(() => [_tree.At("ttyUSB1"), _tree.At("ttyS0")], _tree.At("by-id"));
        Assert.Equal(
        [
            new($"ASRL{_tree.At("ttyS0")}::INSTR", $"serial port {_tree.At("ttyS0")}"),
            new($"ASRL{_tree.At("by-id/usb-Invented_box-if00")}::INSTR", $"serial port {_tree.At("ttyUSB1")}"),
        ], ports.List());
    }

    private InstrumentSearch Search(Instruments.Links.Visa.VisaLibraryNames names, params string[] ports) => new()
    {
        SerialPorts = new(() => ports, "/no/such/folder"),
        Usb = _tree.Devices,
        Visa = names,
    };
}
