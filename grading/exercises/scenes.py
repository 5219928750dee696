"""Invented shops and vehicles that give the exercises their scenes; any likeness to a real shop is chance."""

SHOPS = (
    "Tin Lane Panel Shop",
    "Northgate Body Works",
    "Highfield Body School",
    "Saltmarsh Repairs",
    "Old Kiln Panel Works",
    "Ferry Road Body Shop",
    "Copper Yard Repairs",
    "Windmill Hill Body Works",
)

VEHICLES = (
    "an estate car",
    "a two-door coupe",
    "a delivery van",
    "a family saloon",
    "a small electric car",
    "a pick-up truck",
    "a camper van",
    "a seven-seat car",
)


def scene(draw):
    """Return the shop and the vehicle of one scenario."""
    return {"shop": draw.pick("shop", SHOPS), "vehicle": draw.pick("vehicle", VEHICLES)}
