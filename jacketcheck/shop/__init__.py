"""What a shop cuts: flat patterns, drawings of them, and quantities."""

from jacketcheck.shop.drawing import dxf_text, require_ezdxf
from jacketcheck.shop.package import ShopPackage, shop_package
from jacketcheck.shop.patterns import FlatPattern, flat_patterns
from jacketcheck.shop.quantities import Quantity, quantities

__all__ = [
    "FlatPattern",
    "Quantity",
    "ShopPackage",
    "dxf_text",
    "flat_patterns",
    "quantities",
    "require_ezdxf",
    "shop_package",
]
