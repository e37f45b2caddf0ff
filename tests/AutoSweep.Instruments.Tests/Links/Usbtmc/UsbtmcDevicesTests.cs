using AutoSweep.Core;
using AutoSweep.Instruments.Links;
using AutoSweep.Instruments.Links.Usbtmc;
using AutoSweep.Instruments.Tests.Support;

namespace AutoSweep.Instruments.Tests.Links.Usbtmc;

/// <summary>Over a tree laid out as the kernel's, with its relative links (links need no rights on Linux; elsewhere skipped).</summary>
public sealed class UsbtmcDevicesTests
{
    [PtyFact]
    public void Each_instrument_is_listed_with_a_name_that_finds_it_again()
    {
        using var tree = new UsbTree();
        tree.Plug(0, "1234", "00a8", "A22-5");
        tree.Plug(1, "1234", "00a9", null);
        Assert.Equal(
        [
            new(tree.At("dev/usbtmc0"), 0x1234, 0xA8, "A22-5", "Invented Instruments M1"),
            new(tree.At("dev/usbtmc1"), 0x1234, 0xA9, "", "Invented Instruments M1"),
        ], tree.Devices.List());
        Assert.Equal(
            ["USB::0x1234::0x00A8::A22-5::INSTR", tree.At("dev/usbtmc1")], tree.Devices.List().Select(device => device.Resource));
    }

    [PtyTheory]
    [InlineData("USB::0x1234::0x00A8::A22-5::INSTR")]
    [InlineData("usb0::4660::168::a22-5::0::instr")]
    public void A_resource_name_finds_its_instrument(string name)
    {
        using var tree = new UsbTree();
        tree.Plug(0, "1234", "00a8", "other");
        tree.Plug(1, "1234", "00a8", "A22-5");
        Assert.Equal(tree.At("dev/usbtmc1"), tree.Devices.Find((UsbResource)ResourceName.Parse(name))?.File);
    }

    [Fact]
    public void Where_there_is_no_kernel_list_there_is_nothing() =>
        Assert.Empty(new UsbtmcDevices("/no/such/folder", "/dev").List());

    [PtyFact]
    public async Task A_USB_name_opens_the_kernels_device_file()
    {
        using var line = new PtyPair();
        line.MakeRaw();
        using var tree = new UsbTree();
        tree.Plug(3, "1234", "00a8", "A22-5", line.Port);
        await using var link = await OpenAsync("USB::0x1234::0x00A8::A22-5::INSTR", tree);
        await link.WriteAsync("*RST\n"u8.ToArray(), default);
        Assert.Equal("*RST\n", await line.ReceiveAsync(5));
    }

    [PtyFact]
    public async Task A_USB_name_that_the_kernel_does_not_have_is_a_fault_that_lists_those_that_it_has()
    {
        using var tree = new UsbTree();
        tree.Plug(0, "1234", "00a8", "A22-5");
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => OpenAsync("USB::0x1234::0x00A8::A22-6::INSTR", tree));
        Assert.Equal(BenchFault.NotReachable, fault.Kind);
        Assert.Contains("USB::0x1234::0x00A8::A22-5::INSTR", fault.Found, StringComparison.Ordinal);
    }

    private static Task<ILink> OpenAsync(string name, UsbTree tree) =>
        new LinkOpener(TimeProvider.System, new(["libno-such-visa.so"]), tree.Devices).OpenAsync(ResourceName.Parse(name), new(new()), default);
}
